using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

/// <summary>Each law where one of its pieces ends and the next begins: which of the two slopes counts there, and what
/// flows beyond.</summary>
public class LawLimitTests
{
    private const double Leak = 1e-7;

    // 12 V 2 A: hot 6 Ω, cold a twelfth of it.
    [Fact]
    public void A_filament_of_next_to_no_volts_is_a_resistor_of_a_twelfth_of_its_hot_ohms()
    {
        Assert.Equal(new LawPoint(0.02, 2), Rounded(FilamentLaw.At(0.01, 12, 2)));
        Assert.Equal(new LawPoint(-0.02, 2), Rounded(FilamentLaw.At(-0.01, 12, 2)));
        Assert.Equal(new LawPoint(0, 2), Rounded(FilamentLaw.At(0, 12, 2)));
        Assert.Equal(2, FilamentLaw.At(FilamentLaw.ColdVoltsRatio, 1, 2.0 / 12).SlopeSiemens, 1e-12);
    }

    // The law's ohms fall to a twelfth at (1/12)^(1/0.45) = 0.4 % of the volts; there the currents meet and the slope
    // breaks to 0.55 of it.
    [Fact]
    public void A_filament_turns_cold_where_its_ohms_fall_to_a_twelfth()
    {
        Assert.Equal(0.00400, FilamentLaw.ColdVoltsRatio, 5e-5);
        double volts = 12 * FilamentLaw.ColdVoltsRatio;
        LawPoint cold = FilamentLaw.At(volts * 0.999999, 12, 2),
            hot = FilamentLaw.At(volts * 1.000001, 12, 2);
        Assert.Equal(cold.CurrentAmperes, hot.CurrentAmperes, 1e-6);
        Assert.Equal(0.55 * cold.SlopeSiemens, hot.SlopeSiemens, 1e-5);
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
        Assert.Equal(Math.Pow(0.5, 3.4), lamp.RelativeLightAt(Volts(-6))!.Value.DecimalFractions, 1e-12);
    }

    [Fact]
    public void A_tenth_of_the_volts_is_the_first_at_which_the_life_of_a_filament_is_told()
    {
        Assert.Equal(
            1e13,
            LampSpecification
                .FromCurrent(LampType.Halogen, Volts(10), ElectricCurrent.FromAmperes(1))
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

    // Half its cold conductance times the volts squared while cold; from there on the integral of In·(V/Vn)^0.55.
    [Fact]
    public void The_co_content_of_a_filament_is_its_integral_by_hand()
    {
        Assert.Equal(2 * 0.01 * 0.01 / 2, FilamentLaw.CoContentWatts(-0.01, 12, 2), 1e-12);
        double turn = 12 * Math.Pow(1 / 12.0, 1 / 0.45);
        double cold = turn * turn,
            hot = 24 / 1.55 * (1 - Math.Pow(turn / 12, 1.55));
        Assert.Equal(cold + hot, FilamentLaw.CoContentWatts(12, 12, 2), 1e-9);
    }

    private static LawPoint Rounded(LawPoint point) => new(Round(point.CurrentAmperes), Round(point.SlopeSiemens));

    private static double Round(double value) => Math.Round(value, 12) + 0.0;

    private static ElectricPotential Volts(double volts) => ElectricPotential.FromVolts(volts);
}
