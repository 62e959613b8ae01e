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

    [Fact]
    public void The_ends_of_the_ranges_are_allowed()
    {
        Assert.Equal("1/0.30", StrandedCable.Of(1, Length.FromMillimeters(0.3)).Name);
        Assert.Equal("1000/0.30", StrandedCable.Of(1000, Length.FromMillimeters(0.3)).Name);
        Assert.Equal("1/0.05 mm", StrandedCable.Of(1, Length.FromMillimeters(0.05)).Name);
        Assert.Equal("1/5.00", StrandedCable.Of(1, Length.FromMillimeters(5)).Name);
    }

    [Fact]
    public void What_is_outside_is_said()
    {
        var fine = Length.FromMillimeters(0.3);
        Assert.StartsWith(
            "Strands must be between 1 and 1000.",
            Assert.Throws<ArgumentOutOfRangeException>(() => StrandedCable.Of(0, fine)).Message
        );
        Assert.StartsWith(
            "Strand diameter must be between 0.05 mm and 5 mm.",
            Assert.Throws<ArgumentOutOfRangeException>(() => StrandedCable.Of(1, Length.FromMillimeters(6))).Message
        );
        Assert.StartsWith(
            "Gauge must be between 0 and 40 SWG.",
            Assert.Throws<ArgumentOutOfRangeException>(() => StandardWireGauge.Solid(41)).Message
        );
    }

    // A name means the same when it is read: a figure that could be either unit states its own.
    [Theory]
    [InlineData(14, 0.3, false, "14/0.30")]
    [InlineData(7, 0.08, false, "7/0.08 mm")]
    [InlineData(3, 0.3456, false, "3/0.3456")]
    [InlineData(14, 0.012, true, "14/.012")]
    [InlineData(44, 0.0076, true, "44/.0076")]
    [InlineData(1, 0.064, true, "1/.064 in")]
    [InlineData(1, 0.15, true, "1/.150 in")]
    public void A_cable_is_named_by_its_strands(int strands, double diameter, bool isInch, string name)
    {
        WireSize wire = StrandedCable.Of(
            strands,
            isInch ? Length.FromInches(diameter) : Length.FromMillimeters(diameter)
        );
        Assert.Equal(name, wire.Name);
        Assert.Equal(isInch ? WireConstruction.InchStrands : WireConstruction.MetricStrands, wire.Construction);
        Assert.True(WireTable.TryFind(name, out WireSize? found));
        Assert.Equal(wire, found);
    }

    [Fact]
    public void A_figure_without_a_unit_is_inches_when_small_and_millimetres_when_large()
    {
        Assert.Equal(UnitsNet.Units.LengthUnit.Inch, StrandedCable.UnitOf(0.0499));
        Assert.Null(StrandedCable.UnitOf(0.05));
        Assert.Null(StrandedCable.UnitOf(0.0999));
        Assert.Equal(UnitsNet.Units.LengthUnit.Millimeter, StrandedCable.UnitOf(0.1));
    }

    // A cable that is in no table, by hand: five strands of 0.41 mm are 5 · π/4 · 0.41² = 0.6601 mm².
    [Fact]
    public void An_unlisted_cable_has_the_copper_of_its_strands() =>
        Assert.Equal(0.6601, StrandedCable.Of(5, Length.FromMillimeters(0.41)).CopperArea.SquareMillimeters, 0.0001);

    // SWG 20 is 0.036 in: π/4 · 0.9144² = 0.6567 mm².
    [Fact]
    public void An_imperial_gauge_has_the_area_of_its_circle() =>
        Assert.Equal(0.6567, StandardWireGauge.Solid(20).CopperArea.SquareMillimeters, 0.0001);

    [Fact]
    public void Every_imperial_gauge_is_listed_once_and_strands_by_construction_the_thickest_first()
    {
        Assert.Equal(
            Enumerable.Range(0, 41).Select(g => $"{g} SWG"),
            WireTable.All.Where(w => w.Construction == WireConstruction.StandardWireGauge).Select(w => w.Name)
        );
        WireSize[] strands =
        [
            .. WireTable.All.Where(w =>
                w.Construction is WireConstruction.InchStrands or WireConstruction.MetricStrands
            ),
        ];
        Assert.Equal(
            strands.OrderBy(w => w.Construction).ThenByDescending(w => w.CopperArea.SquareMillimeters),
            strands
        );
    }

    [Theory]
    [InlineData("1.25 mm²")]
    [InlineData("1.25mm2")]
    [InlineData("1.25 MM2")]
    public void A_metric_size_is_found_as_it_is_written(string text)
    {
        Assert.True(WireTable.TryFind(text, out WireSize? wire));
        Assert.Equal("1.25 mm2", wire.Name);
    }

    // I2 ≤ 1.45 · Iz, and k²·S² with k = 115: by hand.
    [Fact]
    public void The_rules_of_overload_and_of_a_dead_short_grow_with_the_wire()
    {
        Assert.Equal(1.45 * 20 / 1.35, OverloadRule.LargestFuse(20, 1.35), 1e-9);
        Assert.Equal(115 * 115 * 4.0, ShortCircuitHeat.AmpereSquaredSeconds(Area.FromSquareMillimeters(2)), 1e-6);
    }

    [Fact]
    public void A_wire_alone_shares_no_heat_however_little_is_loaded()
    {
        Assert.Equal(1, BundleDerating.Of(1, Ratio.FromPercent(20))?.DecimalFractions);
        Assert.Equal(
            BundleDerating.PartlyLoaded(2, Ratio.FromPercent(20)),
            BundleDerating.Of(2, Ratio.FromPercent(20))
        );
        Assert.NotEqual(BundleDerating.AllLoaded(2), BundleDerating.Of(2, Ratio.FromPercent(20)));
    }

    [Fact]
    public void A_diameter_is_that_of_the_kind_of_cable()
    {
        Assert.True(WireTable.TryFind("1 mm2", out WireSize? wire));
        Assert.True(CableDiameter.Largest(wire, CableKind.Ordinary) > CableDiameter.Largest(wire, CableKind.ThinWall));
        Assert.Null(CableDiameter.Largest(wire, CableKind.FreeAir));
    }

    private static double Rated(WireSize wire, CableKind? kind) =>
        CurrentRating.Calculate(wire, Temperature.FromDegreesCelsius(30), 1, kind).Current!.Value.Amperes;
}
