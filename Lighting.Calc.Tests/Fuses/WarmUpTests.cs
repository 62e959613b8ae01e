using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>The parts of the surge one by one: tungsten, the curve, its ends, its words.</summary>
public class WarmUpTests
{
    private static readonly LampSpecification s_lamp = LampSpecification.FromCurrent(
        LampType.Halogen,
        ElectricPotential.FromVolts(13.5),
        ElectricCurrent.FromAmperes(4.5)
    );

    // Lines between (0 s, 10 A), (1 s, 6 A) and (3 s, 2 A), then level.
    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.25, 9)]
    [InlineData(1, 6)]
    [InlineData(2, 4)]
    [InlineData(3, 2)]
    [InlineData(9, 2)]
    public void A_curve_is_straight_between_its_points_and_level_after_them(double seconds, double amperes)
    {
        var curve = new WarmUpCurve([0, 1, 3], [10, 6, 2], IsInTable: true);
        Assert.Equal(amperes, curve.At(seconds), 1e-12);
        double[] sum = [100, 100];
        curve.AddAt([0, seconds], 3, sum);
        Assert.Equal(130, sum[0], 1e-12);
        Assert.Equal(100 + 3 * amperes, sum[1], 1e-12);
    }

    [Fact]
    public void Many_times_are_added_as_each_alone_would_be()
    {
        var curve = new WarmUpCurve([0, 1, 3], [10, 6, 2], IsInTable: true);
        double[] times = [0, 0.1, 0.9, 1, 1, 2.9, 3, 4, 5],
            sum = new double[times.Length];
        curve.AddAt([.. times], 1, sum);
        Assert.Equal(times.Select(curve.At), sum);
    }

    // Heat capacity 0.125 + 2.4e-5·T; at 2000 K radiation 0.26 × 5.670374e-12 × 2000⁴ = 23.589 W/cm².
    [Fact]
    public void Tungsten_is_that_of_its_formulas_and_table()
    {
        Assert.Equal(0.1322, Tungsten.JoulesPerGramKelvin(300), 1e-12);
        Assert.Equal(0.185, Tungsten.JoulesPerGramKelvin(2500), 1e-12);
        Assert.Equal(23.5888, Tungsten.RadiatedWatts(2000), 1e-4);
        Assert.Equal(0.334 * 5.670374e-12 * Math.Pow(3000, 4), Tungsten.RadiatedWatts(3000), 1e-9);
        Assert.Equal(1, Tungsten.ResistanceRatio(300));
        Assert.Equal(300, Tungsten.KelvinAt(1));
        Assert.Equal(3200, Tungsten.KelvinAt(Tungsten.ResistanceRatio(3200)), 1e-9);
        Assert.Equal(1500, Tungsten.KelvinAt(Tungsten.ResistanceRatio(1500)), 1e-9);
        Assert.Equal(
            Tungsten.ResistanceRatio(2000),
            Tungsten.OhmCentimetres(2000) / Tungsten.OhmCentimetres(300),
            0.02
        );
    }

    [Theory]
    [InlineData(299.9)]
    [InlineData(3200.1)]
    public void Tungsten_colder_or_hotter_than_its_table_is_refused(double kelvin)
    {
        foreach (
            Func<double, double> of in new Func<double, double>[]
            {
                Tungsten.ResistanceRatio,
                Tungsten.OhmCentimetres,
                Tungsten.JoulesPerGramKelvin,
                Tungsten.RadiatedWatts,
            }
        )
            Assert.StartsWith(
                "The table of tungsten runs from 300 K to 3200 K.",
                Assert.Throws<ArgumentOutOfRangeException>("kelvin", () => of(kelvin)).Message,
                StringComparison.Ordinal
            );
        Assert.Throws<ArgumentOutOfRangeException>("resistanceRatio", () => Tungsten.KelvinAt(0.99));
    }

    // Behind 1000 Ω 13.5 mA make 0.05 mW in 0.26 Ω; 5 % over its cold resistance the filament gives off 40 mW.
    [Fact]
    public void A_filament_that_gets_next_to_no_current_stays_cold()
    {
        WarmUpCurve curve = new FilamentInrush(s_lamp).Curve(13.5, 1000);
        Assert.Equal([0.0], curve.Seconds);
        Assert.Equal(13.5 / 1000.2, Assert.Single(curve.Amperes), 1e-12);
        Assert.True(curve.IsInTable);
    }

    // A lamp on more than twice its volts: at the table's end, 17.62 times its cold resistance, it still gains heat.
    [Fact]
    public void A_filament_that_would_run_hotter_than_the_table_ends_there_and_says_so()
    {
        var warmUp = new FilamentInrush(s_lamp);
        Assert.Equal(0.2, warmUp.ColdOhms, 1e-12);
        Assert.Equal(150, warmUp.PeakAmperes(30, 0), 1e-9);
        WarmUpCurve curve = warmUp.Curve(30, 0);
        Assert.False(curve.IsInTable);
        Assert.Equal(30 / (0.2 * Tungsten.ResistanceRatio(3200)), curve.Amperes[^1], 0.01);
        Bike bike = Bike(30);
        Assert.EndsWith(
            "; a filament runs hotter than the table of tungsten, so its time is not certain",
            Surge(bike).Explanation,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("hotter", Surge(Bike(13.5)).Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void The_surge_is_told_with_its_peak_its_limit_its_time_and_its_share()
    {
        InrushCheck free = Surge(Bike(13.5)),
            limited = Surge(Bike(13.5) with { BatteryResistance = ElectricResistance.FromMilliohms(20) });
        Assert.Equal(
            string.Create(System.Globalization.CultureInfo.InvariantCulture,
                $"67.5 A in the first instant (no switches), limited by the cold filaments alone, since the lists "
                    + $"give no resistance before them; half of the excess is gone after "
                    + $"{free.HalfOfExcess.Milliseconds:0.##} ms; {free.MeltingShare!.Value.Percent:0} % of the energy "
                    + $"that may melt it"
            ),
            free.Explanation
        );
        Assert.StartsWith(
            "61.4 A in the first instant (no switches), limited by the battery's and the wires' resistance and the "
                + "cold filaments; half of the excess",
            limited.Explanation,
            StringComparison.Ordinal
        );
    }

    // The energy by fine steps of the warm-up's curve; the times of the fuse from its own gates, above the last one by
    // its energy.
    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(20)]
    public void The_share_of_the_melting_energy_is_that_of_fine_steps(double rating)
    {
        InrushCheck on = Surge(Bike(13.5) with { Fuses = [FuseBike.Fuse("main", rating)] });
        WarmUpCurve curve = new FilamentInrush(s_lamp).Curve(13.5, 0);
        Assert.Equal((curve.Amperes[0] + curve.Amperes[^1]) / 2, curve.At(on.HalfOfExcess.Seconds), 1e-6);
        Assert.Equal(4.5, on.Steady.Amperes, 1e-9);
        double energy = 0,
            worst = 0,
            step = curve.Seconds[^1] / 50_000;
        for (int i = 1; i <= 50_000; i++)
        {
            energy += Math.Pow(curve.At((i - 0.5) * step), 2) * step;
            double effective = Math.Sqrt(energy / (i * step)),
                ofRating = effective / rating;
            double? least =
                ofRating > 6 ? 0.02 * Math.Pow(6 / ofRating, 2)
                : ofRating >= 1.1
                    ? OpeningTime
                        .Calculate(
                            FuseStyle.Blade,
                            ElectricCurrent.FromAmperes(rating),
                            ElectricCurrent.FromAmperes(effective)
                        )
                        .Fastest?.Seconds
                : null;
            worst = Math.Max(worst, i * step / least ?? 0);
        }

        Assert.Equal(1, on.MeltingShare!.Value.DecimalFractions / worst, 0.02);
    }

    // 67.5 A on the one, 67.5 and 30 A of cold 0.45 Ω on both.
    [Fact]
    public void The_setting_of_the_greatest_peak_counts_and_what_is_off_does_not_surge()
    {
        Bike bike = Bike(13.5) with
        {
            Lamps =
            [
                FuseBike.Load("headlamp", LampType.Halogen, 13.5, 4.5, litWhen: "lights=on"),
                FuseBike.Load("stop", LampType.Filament, 13.5, 2, litWhen: "brake=on"),
                FuseBike.Load("coil", LampType.Fixed, 12, 3, litWhen: "lights=on"),
            ],
        };
        InrushCheck on = Surge(bike);
        Assert.Contains("(lights=on; brake=on)", on.Explanation, StringComparison.Ordinal);
        Assert.Equal(67.5 + 30 + 3, on.Peak.Amperes, 1e-6);
        Assert.Equal(4.5 + 2 + 3, on.Steady.Amperes, 1e-6);
        Assert.StartsWith("100.5 A in the first instant", on.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void What_melts_a_glass_fuse_that_no_data_sheet_knows_is_left_to_its_own()
    {
        InrushCheck on = Surge(Bike(13.5) with { Fuses = [FuseBike.Fuse("main", 10, style: FuseStyle.Glass)] });
        Assert.Matches(
            "; it brings [0-9]+ A²s; what melts a glass fuse of 10 A is not known: see that its data sheet has more$",
            on.Explanation
        );
        Assert.Equal(
            "Whether it withstands the 67.5 A inrush is unknown: minimum opening times are not published for glass "
                + "fuses.",
            FuseBike
                .Check(Bike(13.5) with { Fuses = [FuseBike.Fuse("main", 10, style: FuseStyle.Glass)] })
                .Single()
                .Findings.Single(f => f.Message.StartsWith("Whether it withstands", StringComparison.Ordinal))
                .Message
        );
    }

    [Fact]
    public void A_load_without_a_filament_is_said_to_have_no_surge() =>
        Assert.Equal(
            "no surge: it feeds no cold filament (no switches)",
            Surge(Bike(13.5) with { Lamps = [FuseBike.Load("led", LampType.Led, 13.5, 1)] }).Explanation
        );

    [Theory]
    [InlineData("brake")]
    [InlineData("Stop")]
    [InlineData("horn")]
    [InlineData("indicators")]
    [InlineData("indicator")]
    [InlineData("turn")]
    [InlineData("turn signals")]
    [InlineData("FLASHER")]
    [InlineData("flash")]
    [InlineData("pass")]
    public void What_a_switch_that_is_held_for_moments_adds_is_told_apart(string name)
    {
        var bike = new Bike
        {
            Fuses = [FuseBike.Fuse("main", 10)],
            Lamps =
            [
                FuseBike.Load("headlamp", LampType.Fixed, 12, 4, litWhen: "lights=on"),
                FuseBike.Load("other", LampType.Fixed, 12, 2, litWhen: $"{name}=on"),
            ],
        };
        Assert.Equal(4, FuseBike.Check(bike).Single().Steady.ContinuousCurrent.Amperes, 1e-9);
        Assert.Equal(
            6,
            FuseBike.Check(bike, new FuseOptions { MomentarySwitches = [] }).Single().Steady.ContinuousCurrent.Amperes,
            1e-9
        );
    }

    [Fact]
    public void Without_current_none_of_it_flows_for_moments()
    {
        var bike = new Bike { Fuses = [FuseBike.Fuse("main", 10)], Lamps = [] };
        ContinuousLoad steady = FuseBike.Check(bike).Single().Steady;
        Assert.Equal(0, steady.ContinuousCurrent.Amperes);
        Assert.True(steady.Suits);
    }

    private static Bike Bike(double volts) =>
        new()
        {
            ChargingVoltage = ElectricPotential.FromVolts(volts),
            BatteryResistance = ElectricResistance.Zero,
            Fuses = [FuseBike.Fuse("main", 15)],
            Lamps = [FuseBike.Load("headlamp", LampType.Halogen, 13.5, 4.5)],
        };

    private static InrushCheck Surge(Bike bike) => FuseBike.Check(bike).Single().InrushCheck!;
}
