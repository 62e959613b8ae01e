using Lighting.Calc.Conductors;
using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

public class CopperTests
{
    [Fact]
    public void A_kilometre_of_one_square_millimetre_is_the_inverse_of_58_per_metre() =>
        Assert.Equal(1000.0 / 58, Copper.Resistance(Length.FromKilometers(1), Area.FromSquareMillimeters(1), Temperature.FromDegreesCelsius(20)).Ohms, 1e-12);

    [Theory]
    [InlineData(-61)]
    [InlineData(251)]
    public void A_temperature_outside_the_linear_span_is_refused(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Copper.ResistanceFactor(Temperature.FromDegreesCelsius(celsius)));
}
