using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

/// <summary>Each law where one of its pieces ends and the next begins: which of the two slopes counts there, and what
/// flows beyond.</summary>
public class LawLimitTests
{
    private const double Leak = 1e-7;

    // 12 V 2 A: hot 6 Ω, cold a twelfth of it.
    [Fact]
    public void A_filament_of_almost_no_voltage_is_a_resistor_of_a_twelfth_of_its_hot_ohms()
    {
        foreach (double volts in new[] { 1e-4, -1e-4 })
        {
            LawPoint point = FilamentLaw.At(volts, 12, 2);
            Assert.Equal(2 * volts, point.CurrentAmperes, 1e-7);
            Assert.Equal(2, point.SlopeSiemens, 1e-2);
        }

        Assert.Equal(new LawPoint(0, 2), Rounded(FilamentLaw.At(0, 12, 2)));
    }

    [Fact]
    public void At_seven_tenths_of_the_voltage_current_and_slope_run_on_from_one_law_to_the_other()
    {
        LawPoint below = FilamentLaw.At(8.4 * (1 - 1e-9), 12, 2),
            above = FilamentLaw.At(8.4 * (1 + 1e-9), 12, 2);
        Assert.Equal(above.CurrentAmperes, below.CurrentAmperes, 1e-7);
        Assert.Equal(above.SlopeSiemens, below.SlopeSiemens, 1e-6);
        Assert.Equal(2 * Math.Pow(0.7, 0.55), above.CurrentAmperes, 1e-7);
        Assert.Equal(
            FilamentLaw.CoContentWatts(8.4 * (1 - 1e-12), 12, 2),
            FilamentLaw.CoContentWatts(8.4, 12, 2),
            1e-9
        );
    }

    // More voltage is more current, more resistance, and a slope that never jumps.
    [Fact]
    public void Below_that_current_and_resistance_rise_with_the_voltage()
    {
        LawPoint last = FilamentLaw.At(0, 12, 2);
        double ohms = 0.5;
        for (double volts = 0.001; volts < 9; volts += 0.001)
        {
            LawPoint point = FilamentLaw.At(volts, 12, 2);
            Assert.True(point.CurrentAmperes > last.CurrentAmperes && point.SlopeSiemens > 0, $"{volts} V");
            Assert.True(volts / point.CurrentAmperes > ohms - 1e-4, $"{volts} V");
            Assert.Equal(last.SlopeSiemens, point.SlopeSiemens, 0.05);
            (last, ohms) = (point, volts / point.CurrentAmperes);
        }
    }

    // At each temperature the power taken is what is radiated and conducted there, and the resistance the table's.
    [Theory]
    [InlineData(500)]
    [InlineData(800)]
    [InlineData(1400)]
    [InlineData(1800)]
    public void Below_that_power_is_heat_radiated_and_conducted(double kelvin)
    {
        double hot = Tungsten.KelvinAt(12 * Math.Pow(0.7, 0.45)),
            share = FilamentHeat.ConductedShare;
        Assert.InRange(share, 0.13, 0.15);
        double heat =
                Math.Pow(0.7, 1.55)
                * (
                    (1 - share) * Radiated(kelvin) / Radiated(hot)
                    + share * (kelvin - 300) / (hot - 300)
                ),
            ohms = Tungsten.ResistanceRatio(kelvin) / 12,
            volts = Math.Sqrt(heat * ohms);
        Assert.Equal(volts / ohms, FilamentLaw.At(volts, 1, 1).CurrentAmperes, 1e-4);
        Assert.Equal(heat, FilamentLaw.PowerAt(ohms), 1e-5);

        static double Radiated(double t) => Tungsten.RadiatedWatts(t) - Tungsten.RadiatedWatts(300);
    }

    [Fact]
    public void Power_from_resistance_runs_on_and_is_none_of_a_cold_filament()
    {
        double meeting = Math.Pow(0.7, 0.45);
        Assert.Equal(FilamentLaw.PowerAt(meeting * (1 + 1e-12)), FilamentLaw.PowerAt(meeting * (1 - 1e-9)), 1e-7);
        Assert.Equal(0, FilamentLaw.PowerAt(1.0 / 12));
        Assert.Equal(1, FilamentLaw.PowerAt(1), 1e-12);
    }

    // Light of a halogen lamp by the cube; no life below nine tenths of its voltage.
    [Fact]
    public void A_halogen_lamp_has_a_light_and_a_life_of_its_own()
    {
        LampSpecification halogen = LampSpecification.FromCurrent(
                LampType.Halogen,
                Volts(12),
                ElectricCurrent.FromAmperes(5)
            ),
            filament = LampSpecification.FromCurrent(LampType.Filament, Volts(12), ElectricCurrent.FromAmperes(5));
        Assert.Equal(Math.Pow(1.1, 3), halogen.RelativeLightAt(Volts(13.2))!.Value.DecimalFractions, 1e-12);
        Assert.Equal(Math.Pow(1.1, 3.4), filament.RelativeLightAt(Volts(13.2))!.Value.DecimalFractions, 1e-12);
        Assert.Null(halogen.RelativeLifeAt(Volts(10.7)));
        Assert.Equal(Math.Pow(0.9, -13), halogen.RelativeLifeAt(Volts(10.8))!.Value.DecimalFractions, 1e-9);
        Assert.NotNull(filament.RelativeLifeAt(Volts(10.7)));
    }

    [Fact]
    public void A_filament_does_not_care_for_polarity()
    {
        LampSpecification lamp = LampSpecification.FromCurrent(
            LampType.Halogen,
            Volts(12),
            ElectricCurrent.FromAmperes(5)
        );
        Assert.Equal(-5, lamp.CurrentAt(Volts(-12)).Amperes, 1e-12);
        Assert.Equal(60, (double)lamp.PowerAt(Volts(-12)).Watts, 1e-9);
        Assert.Equal(1, lamp.RelativeLightAt(Volts(-12))!.Value.DecimalFractions, 1e-12);
        Assert.Equal(0.125, lamp.RelativeLightAt(Volts(-6))!.Value.DecimalFractions, 1e-12);
    }

    [Fact]
    public void A_tenth_of_the_volts_is_the_first_at_which_the_life_of_a_filament_is_told()
    {
        Assert.Equal(
            1e13,
            LampSpecification
                .FromCurrent(LampType.Filament, Volts(10), ElectricCurrent.FromAmperes(1))
                .RelativeLifeAt(Volts(1))!
                .Value.DecimalFractions,
            1e5
        );
        Assert.Null(
            LampSpecification
                .FromCurrent(LampType.Led, Volts(10), ElectricCurrent.FromAmperes(1))
                .RelativeLifeAt(Volts(10))
        );
    }

    // 3 W and 9 V: 1/3 A and −1/27 S from 9 V up, 3/81 S below.
    [Fact]
    public void A_driver_holds_its_watts_at_its_minimum_volts_and_only_leaks_at_none()
    {
        Assert.Equal(new LawPoint(Round(1 / 3.0), Round(-1 / 27.0)), Rounded(LedDriverLaw.At(9, 3, 9)));
        Assert.Equal(new LawPoint(Round(3 / 81.0), Round(3 / 81.0)), Rounded(LedDriverLaw.At(1, 3, 9)));
        Assert.Equal(new LawPoint(0, Leak), LedDriverLaw.At(0, 3, 9));
        Assert.Equal(new LawPoint(-10 * Leak, Leak), LedDriverLaw.At(-10, 3, 9));
    }

    [Fact]
    public void A_ballasted_LED_only_leaks_up_to_its_forward_volts()
    {
        Assert.Equal(new LawPoint(9 * Leak, Leak), LedResistorLaw.At(9, 9, 20));
        Assert.Equal(new LawPoint(2 / 20.0 + 11 * Leak, 1 / 20.0 + Leak), LedResistorLaw.At(11, 9, 20));
        Assert.Equal(new LawPoint(-9 * Leak, Leak), LedResistorLaw.At(-9, 9, 20));
    }

    [Fact]
    public void A_fixed_load_has_no_slope_from_half_a_volt_on_and_only_leaks_at_none()
    {
        Assert.Equal(new LawPoint(2, 0), FixedLoadLaw.At(0.5, 2));
        Assert.Equal(new LawPoint(1, 4), FixedLoadLaw.At(0.25, 2));
        Assert.Equal(new LawPoint(0, Leak), FixedLoadLaw.At(0, 2));
        Assert.Equal(new LawPoint(-3 * Leak, Leak), FixedLoadLaw.At(-3, 2));
    }

    // ∫ I dV by hand. Driver of 3 W and 9 V: a triangle of 3 W to 9 V, then 3·ln(V/9). Ballast of 20 Ω from 9 V: (V −
    // 9)²/40. Fixed 2 A: a triangle to half a volt, then a rectangle. Each but for the leak, ½·V²·1e-7.
    [Fact]
    public void The_co_content_of_each_LED_and_of_a_fixed_load_is_its_integral_by_hand()
    {
        Assert.Equal(1.5 + 3 * Math.Log(2), LedDriverLaw.CoContentWatts(18, 3, 9), 1e-12);
        Assert.Equal(1.5, LedDriverLaw.CoContentWatts(9, 3, 9), 1e-12);
        Assert.Equal(1.5 / 9, LedDriverLaw.CoContentWatts(3, 3, 9), 1e-12);
        Assert.Equal(50 * Leak, LedDriverLaw.CoContentWatts(-10, 3, 9), 1e-15);
        Assert.Equal(0.4 + 84.5 * Leak, LedResistorLaw.CoContentWatts(13, 9, 20), 1e-12);
        Assert.Equal(50 * Leak, LedResistorLaw.CoContentWatts(-10, 9, 20), 1e-15);
        Assert.Equal(11.5 * 2 + 0.5, FixedLoadLaw.CoContentWatts(12, 2), 1e-12);
        Assert.Equal(0.125, FixedLoadLaw.CoContentWatts(0.25, 2), 1e-12);
        Assert.Equal(50 * Leak, FixedLoadLaw.CoContentWatts(-10, 2), 1e-15);
    }

    // Below seven tenths by the trapezoidal rule; from there on the integral of In·(V/Vn)^0.55.
    [Fact]
    public void The_co_content_of_a_filament_is_its_integral()
    {
        double low = 0;
        const double step = 1e-4;
        for (int i = 0; i < 84000; i++)
            low +=
                step
                / 2
                * (
                    FilamentLaw.At(i * step, 12, 2).CurrentAmperes
                    + FilamentLaw.At((i + 1) * step, 12, 2).CurrentAmperes
                );
        Assert.Equal(low, FilamentLaw.CoContentWatts(-8.4, 12, 2), 1e-7);
        Assert.Equal(
            low + 24 / 1.55 * (1 - Math.Pow(0.7, 1.55)),
            FilamentLaw.CoContentWatts(12, 12, 2),
            1e-7
        );
    }

    private static LawPoint Rounded(LawPoint point) => new(Round(point.CurrentAmperes), Round(point.SlopeSiemens));

    private static double Round(double value) => Math.Round(value, 12) + 0.0;

    private static ElectricPotential Volts(double volts) => ElectricPotential.FromVolts(volts);
}
