using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

/// <summary>What holds for counted strands and imperial gauges beside the printed figures.</summary>
public class StrandedCableLawTests
{
    [Fact]
    public void Old_inch_cable_is_never_rated_above_ordinary_cable() =>
        Assert.All(
            WireTable.Of(WireConstruction.InchStrands),
            w => Assert.True(Rated(w, null) <= Rated(w, CableKind.Ordinary))
        );

    // "Wire Gauge", a table of even gauges: AWG 10, 12, 14, 16, 18 and 20 are nearest to SWG 12, 14, 16, 18, 20 and 22.
    [Theory]
    [InlineData(10, 12)]
    [InlineData(12, 14)]
    [InlineData(14, 16)]
    [InlineData(16, 18)]
    [InlineData(18, 20)]
    [InlineData(20, 22)]
    public void The_nearest_imperial_gauge_of_an_American_one(int american, int imperial)
    {
        double diameter = AmericanWireGauge.Diameter(american).Inches;
        Assert.Equal(
            imperial,
            Enumerable
                .Range(0, 21)
                .Select(g => 2 * g)
                .MinBy(g => Math.Abs(StandardWireGauge.Diameter(g).Inches - diameter))
        );
    }

    [Fact]
    public void Strands_and_gauges_outside_their_range_are_refused()
    {
        var fine = Length.FromMillimeters(0.3);
        Assert.Throws<ArgumentOutOfRangeException>("strands", () => StrandedCable.Of(0, fine));
        Assert.Throws<ArgumentOutOfRangeException>("strands", () => StrandedCable.Of(1001, fine));
        Assert.Throws<ArgumentOutOfRangeException>("diameter", () => StrandedCable.Of(1, Length.FromMillimeters(0.04)));
        Assert.Throws<ArgumentOutOfRangeException>("diameter", () => StrandedCable.Of(1, Length.FromInches(0.2)));
        Assert.Throws<ArgumentOutOfRangeException>("gauge", () => StandardWireGauge.Solid(41));
    }

    private static double Rated(WireSize wire, CableKind? kind) =>
        CurrentRating.Calculate(wire, Temperature.FromDegreesCelsius(30), 1, kind).Current!.Value.Amperes;
}
