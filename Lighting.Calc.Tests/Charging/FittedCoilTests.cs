using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

public class FittedCoilTests
{
    /// <summary>13.5 V and a bridge of 1.7 V.</summary>
    private static readonly ElectricPotential s_volts = ElectricPotential.FromVolts(15.2);

    [Fact]
    public void It_cuts_in_where_the_EMF_passes_charging_volts_and_bridge()
    {
        // 16 V at 1000 rpm pass 15.2 V at 950 rpm.
        ChargingSystem system = Fitted(ListOf(Coil(16, 1.2, 0.8), 1000, 2000, 5000), 1);
        Assert.Equal(
            new ChargingOutput(OutputRange.FittedBeyondPoints, ElectricCurrent.Zero),
            system.OutputAt(Rpm(949), Setting.Empty)
        );
        Assert.True(system.OutputAt(Rpm(951), Setting.Empty).Current!.Value.Amperes > 0);
        Assert.Equal(
            950,
            system.Coils.Single().Source.SpeedFor(ElectricCurrent.Zero, s_volts)!.Value.RevolutionsPerMinute,
            0.01
        );
    }

    [Fact]
    public void Break_even_follows_from_the_phasor_equation()
    {
        // n = (V + I·R)/√(k² − I²·l²) = (15.2 + 5 · 0.8)/√(0.016² − (5 · 0.0012)²) = 19.2/0.0148324 = 1294.5 rpm.
        BreakEven even = Fitted(ListOf(Coil(16, 1.2, 0.8), 1000, 2000, 5000), 5).BalanceIn(Setting.Empty).BreakEven;
        Assert.Equal(1294.5, even.Speed!.Value.RevolutionsPerMinute, 0.1);
        Assert.Equal(
            BreakEvenOutcome.Never,
            Fitted(ListOf(Coil(16, 1.2, 0.8), 1000, 2000, 5000), 13.4).BalanceIn(Setting.Empty).BreakEven.Outcome
        );
    }

    [Fact]
    public void Two_points_are_met_by_a_coil_without_resistance()
    {
        AlternatorEquivalentFit fit = Fitted(Bike((1500, 4, ""), (4000, 9, "")), 1).Coils.Single();
        Assert.Equal(0, fit.Source.CoilResistance.Ohms);
        Assert.All(fit.Residuals, r => Assert.Equal(0, r.Residual.Amperes, 1e-6));
    }

    [Fact]
    public void A_list_with_a_cut_in_is_refused_by_the_machine_and_met_by_the_coil()
    {
        Bike bike = Bike((1200, 0.5, ""), (1800, 3.2, ""), (2500, 5.6, ""), (3500, 7.4, ""), (4500, 8.2, ""));
        var error = Assert.Throws<ArgumentException>(() =>
            ChargingSystem.WithLoads(bike, Load(1), new ChargingOptions { Model = ChargingModel.FittedMachine })
        );
        Assert.Contains("coil model", error.Message, StringComparison.Ordinal);
        Assert.All(Fitted(bike, 1).Coils.Single().Residuals, r => Assert.InRange(r.Residual.Amperes, -0.2, 0.2));
    }

    [Fact]
    public void Falling_amps_are_no_coil() =>
        Assert.Contains(
            "the amps fall",
            Assert
                .Throws<ArgumentException>(() => Fitted(Bike((1000, 5, ""), (2000, 4, ""), (3000, 3, "")), 1))
                .Message,
            StringComparison.Ordinal
        );

    [Property]
    public Property A_fit_recovers_the_coil_that_made_the_points() =>
        Prop.ForAll(
            Gen.Choose(12, 40).Select(v => (double)v).ToArbitrary(),
            Gen.Choose(3, 40).Select(v => v / 10.0).ToArbitrary(),
            Gen.Choose(1, 30).Select(v => v / 10.0).ToArbitrary(),
            (open, reactance, resistance) =>
            {
                AlternatorEquivalent coil = Coil(open, reactance, resistance),
                    fitted = Fitted(ListOf(coil, 1400, 1800, 2500, 4000, 7000), 1).Coils.Single().Source;
                return Math.Abs(fitted.OpenVoltageAt(Rpm(1000)).Volts / open - 1) < 1e-3
                    && Math.Abs(fitted.ReactanceAt(Rpm(1000)).Ohms / reactance - 1) < 1e-3
                    && Math.Abs(fitted.CoilResistance.Ohms - resistance) < 0.01;
            }
        );

    [Property]
    public Property A_rising_list_gives_a_coil_or_a_reason_and_no_neighbour_is_closer() =>
        Prop.ForAll(Gen.Choose(1, 300).Select(v => v / 100.0).ArrayOf(5).ToArbitrary(), HasNoCloserNeighbour);

    // Its first point lies at cut-in, where the error has a kink.
    [Fact]
    public void A_fit_at_a_kink_has_no_closer_neighbour_either() =>
        Assert.True(HasNoCloserNeighbour([0.87, 0.04, 0.38, 1.76, 2.66]));

    [Theory]
    [InlineData(0, null)]
    [InlineData(-13.5, null)]
    [InlineData(13.5, -0.1)]
    public void Volts_or_ohms_that_no_coil_has_are_refused(double volts, double? ohms)
    {
        ChargingCurve curve = ChargingCurve.Of(Bike((1000, 1, ""), (2000, 3, ""), (4000, 5, "")).Charging).Single();
        ElectricResistance? resistance = ohms is { } o ? ElectricResistance.FromOhms(o) : null;
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            AlternatorEquivalentFit.TryFit(curve, ElectricPotential.FromVolts(volts), resistance, out _, out _)
        );
    }

    private static bool HasNoCloserNeighbour(double[] steps)
    {
        double sum = 0;
        Bike bike = Bike([.. steps.Select((s, i) => (1000.0 * (i + 1), sum += s, ""))]);
        if (
            !AlternatorEquivalentFit.TryFit(
                ChargingCurve.Of(bike.Charging).Single(),
                s_volts,
                null,
                out AlternatorEquivalentFit? fit,
                out string? reason
            )
        )
            return reason!.Length > 0;
        double least = fit!.Residuals.Sum(r => Math.Pow(r.Residual.Amperes, 2));
        return new[]
        {
            (1.003, 1.0, 1.0),
            (0.997, 1.0, 1.0),
            (1.0, 1.003, 1.0),
            (1.0, 0.997, 1.0),
            (1.0, 1.0, 1.003),
            (1.0, 1.0, 0.997),
        }.All(f =>
        {
            var other = new AlternatorEquivalent(
                Rpm(1000),
                fit.Source.OpenVoltageAt(Rpm(1000)) * f.Item1,
                fit.Source.ReactanceAt(Rpm(1000)) * f.Item2,
                fit.Source.CoilResistance * f.Item3
            );
            return bike.Charging.Sum(p =>
                    Math.Pow(p.Current.Amperes - (other.CurrentAt(p.Speed, s_volts)?.Amperes ?? 0), 2)
                )
                >= least - 1e-6;
        });
    }

    private static AlternatorEquivalent Coil(double openVolts, double reactanceOhms, double ohms) =>
        new(
            Rpm(1000),
            ElectricPotential.FromVolts(openVolts),
            ElectricResistance.FromOhms(reactanceOhms),
            ElectricResistance.FromOhms(ohms)
        );

    private static Bike ListOf(AlternatorEquivalent coil, params double[] rpm) =>
        Bike() with
        {
            Charging =
            [
                .. rpm.Select(n => new ChargingPoint(Rpm(n), coil.CurrentAt(Rpm(n), s_volts)!.Value, Condition.Always)),
            ],
        };

    private static ChargingSystem Fitted(Bike bike, double load) =>
        ChargingSystem.WithLoads(bike, Load(load), new ChargingOptions { Model = ChargingModel.FittedCoil });
}
