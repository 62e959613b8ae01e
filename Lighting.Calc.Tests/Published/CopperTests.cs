using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Copper against IEC 60028, NBS Handbook 100, FAA AC 43.13-1B and the correction table of IEC
/// 60228.</summary>
public class CopperTests
{
    [Fact]
    [Against("copper", "IEC 60028", CheckKind.Copied)]
    public void IEC_60028_resistivity_of_annealed_copper_is_1_7241e_8_ohm_metre() =>
        Publication.Meets(1.7241e-8, Copper.ResistivityAt20Celsius.OhmMeters, 0.00005e-8);

    [Fact]
    [Against("copper", "NBS Handbook 100, one constant in other units", CheckKind.Arithmetic)]
    public void NBS_Handbook_100_circular_mil_form_is_10_371_ohm() =>
        Publication.Meets(
            10.371,
            Copper
                .Resistance(
                    Length.FromFeet(1),
                    Area.FromSquareInches(Math.PI / 4 * 1e-6),
                    Temperature.FromDegreesCelsius(20)
                )
                .Ohms,
            0.0005
        );

    // NBS Handbook 100: 0.15328 ohm for one metre of a conductor of one gram, density 8.89 g/cm3. Area of it: 1/8.89
    // mm2.
    [Fact]
    [Against("copper", "NBS Handbook 100, one constant in other units", CheckKind.Arithmetic)]
    public void NBS_Handbook_100_mass_resistivity_is_0_15328_ohm_gram_per_square_metre() =>
        Publication.Meets(
            0.15328,
            Copper
                .Resistance(
                    Length.FromMeters(1),
                    Area.FromSquareMillimeters(1 / 8.89),
                    Temperature.FromDegreesCelsius(20)
                )
                .Ohms,
            0.00001
        );

    // Handbook 100 prints the coefficient referred to other temperatures: 0.00427 at 0 °C, 0.00385 at 25 °C.
    [Theory]
    [InlineData(0, 0.00427)]
    [InlineData(25, 0.00385)]
    [Against("copper", "NBS Handbook 100, temperature coefficients", CheckKind.Model)]
    public void NBS_Handbook_100_temperature_coefficient_at(double celsius, double printedPerKelvin)
    {
        double coefficient = (Factor(celsius + 1) - Factor(celsius)) / Factor(celsius);
        Publication.Meets(printedPerKelvin, coefficient, 0.000006);
    }

    // FAA AC 43.13-1B Chg 1 paragraph 11-66: L2 = 254.5 L1 / (234.5 + T2), the inverse of the resistance factor.
    [Theory]
    [InlineData(50)]
    [InlineData(105)]
    [InlineData(182)]
    [Against("copper", "FAA AC 43.13-1B, paragraph 11-66", CheckKind.Arithmetic)]
    public void FAA_AC_43_13_1B_hot_run_formula_agrees_within_0_01_percent(double celsius) =>
        Publication.Meets(254.5 / (234.5 + celsius), 1 / Factor(celsius), 0.0001);

    // IEC 60228 annex, factors to 20 °C as printed; they come from 250/(230 + t), so the model differs by up to 0.4 %.
    [Theory]
    [InlineData(5, 1.064)]
    [InlineData(10, 1.042)]
    [InlineData(15, 1.020)]
    [InlineData(25, 0.980)]
    [InlineData(30, 0.962)]
    [InlineData(35, 0.943)]
    [InlineData(40, 0.926)]
    [InlineData(50, 0.893)]
    [InlineData(60, 0.862)]
    [InlineData(70, 0.833)]
    [InlineData(80, 0.806)]
    [InlineData(90, 0.781)]
    [InlineData(100, 0.758)]
    [InlineData(45, 0.909)]
    [InlineData(55, 0.877)]
    [InlineData(65, 0.847)]
    [InlineData(75, 0.820)]
    [InlineData(85, 0.794)]
    [InlineData(95, 0.769)]
    [Against("copper", "IEC 60228, correction to 20 °C", CheckKind.Model)]
    public void IEC_60228_correction_to_20_C_agrees_within_0_45_percent(double celsius, double printed) =>
        Publication.MeetsWithin(0.0045, printed, 1 / Factor(celsius));

    private static double Factor(double celsius) =>
        Copper.ResistanceFactor(Temperature.FromDegreesCelsius(celsius)).DecimalFractions;
}
