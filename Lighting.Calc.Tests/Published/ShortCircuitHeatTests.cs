using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Heat of a short against a printed worked example and the printed factor k.</summary>
public class ShortCircuitHeatTests
{
    [Theory]
    [InlineData(90, 0.4, 0.49)]
    [InlineData(200, 0.4, 1.10)]
    [Against("wire in a dead short", "Basic Electrical Installation Work, 4th ed., page 251, k = 115", CheckKind.Model)]
    public void The_least_area_is_that_of_the_worked_examples(
        double amperes,
        double seconds,
        double squareMillimetres
    ) =>
        Publication.Meets(
            squareMillimetres,
            ShortCircuitHeat
                .LeastArea(ElectricCurrent.FromAmperes(amperes), Duration.FromSeconds(seconds))
                .SquareMillimeters,
            0.006
        );

    [Fact]
    [Against("wire in a dead short", "IEC 60949, copper from 70 °C to 160 °C", CheckKind.Arithmetic)]
    public void The_factor_is_that_of_the_adiabatic_law()
    {
        double k = 226 * Math.Sqrt(Math.Log((234.5 + 160) / (234.5 + 70)));
        Publication.Meets(k, Math.Sqrt(ShortCircuitHeat.AmpereSquaredSeconds(Area.FromSquareMillimeters(1))), 0.05);
    }
}
