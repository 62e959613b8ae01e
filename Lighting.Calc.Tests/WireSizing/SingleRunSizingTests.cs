using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

public sealed class SingleRunSizingTests
{
    // 8 A over 1.8 m there and back at 12 V and 3 %: 0.36 V / (8 A × 3.6 m) = 12.5 mΩ/m at most.
    private static readonly SingleRunOptions s_run = new()
    {
        Current = ElectricCurrent.FromAmperes(8),
        Length = Length.FromMeters(1.8),
        Voltage = ElectricPotential.FromVolts(12),
    };

    [Fact]
    public void The_drop_counts_there_and_back()
    {
        SingleRunResult result = SingleRunSizing.Size(s_run);
        Assert.Equal(("2 mm2", SizingConstraint.Drop), (result.Chosen!.Name, result.Limit));
        SingleRunCandidate chosen = result.Candidates.Single(c => c.Wire == result.Chosen);
        Assert.Equal(8 * 3.6 * 9.42e-3, chosen.Drop.Volts, 9);
        Assert.Contains("1.5 mm2", result.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void One_way_counts_the_length_once() =>
        Assert.Equal("0.75 mm2", SingleRunSizing.Size(s_run with { OneWay = true }).Chosen!.Name);

    [Fact]
    public void A_fuse_asks_for_a_wire_that_carries_its_rating()
    {
        SingleRunResult result = SingleRunSizing.Size(
            s_run with
            {
                OneWay = true,
                Fuse = ElectricCurrent.FromAmperes(20),
            }
        );
        Assert.Equal(("1.25 mm2", SizingConstraint.Fuse), (result.Chosen!.Name, result.Limit));
        Assert.True(result.Candidates.Single(c => c.Wire == result.Chosen).Rating.Current!.Value.Amperes >= 20);
    }

    [Fact]
    public void A_short_run_is_limited_by_heat()
    {
        SingleRunResult result = SingleRunSizing.Size(
            s_run with
            {
                Current = ElectricCurrent.FromAmperes(18),
                Length = Length.FromMeters(0.1),
            }
        );
        Assert.Equal(("1 mm2", SizingConstraint.Heat), (result.Chosen!.Name, result.Limit));
    }

    [Fact]
    public void Strength_is_a_limit_of_its_own()
    {
        SingleRunResult result = SingleRunSizing.Size(
            s_run with
            {
                Current = ElectricCurrent.FromAmperes(1),
                MinimumArea = Area.FromSquareMillimeters(0.7),
            }
        );
        Assert.Equal(("0.75 mm2", SizingConstraint.Mechanical), (result.Chosen!.Name, result.Limit));
    }

    [Fact]
    public void The_least_current_is_held_by_the_thinnest_listed()
    {
        SingleRunResult result = SingleRunSizing.Size(
            s_run with
            {
                Current = ElectricCurrent.FromAmperes(0.1),
                MinimumArea = Area.Zero,
            }
        );
        Assert.Equal((result.Candidates[0].Wire, SizingConstraint.SmallestListed), (result.Chosen, result.Limit));
    }

    [Fact]
    public void Where_no_size_does_it_the_thickest_tells_by_how_much()
    {
        SingleRunResult result = SingleRunSizing.Size(
            s_run with
            {
                OtherResistance = ElectricResistance.FromMilliohms(60),
            }
        );
        Assert.Null(result.Chosen);
        Assert.Contains("even 16 mm2", result.Explanation, StringComparison.Ordinal);
        Assert.Contains("alone takes 4 %", result.Explanation, StringComparison.Ordinal);
        Assert.Equal("16 mm2", result.Neighbours()[^1].Wire.Name);
    }

    [Fact]
    public void Neighbours_are_two_on_each_side() =>
        Assert.Equal(
            ["1.25 mm2", "1.5 mm2", "2 mm2", "2.5 mm2", "3 mm2"],
            SingleRunSizing.Size(s_run).Neighbours().Select(c => c.Wire.Name)
        );

    [Fact]
    public void Options_outside_their_range_are_refused()
    {
        foreach (
            SingleRunOptions bad in new[]
            {
                s_run with
                {
                    Current = ElectricCurrent.Zero,
                },
                s_run with
                {
                    Length = Length.Zero,
                },
                s_run with
                {
                    Voltage = ElectricPotential.Zero,
                },
                s_run with
                {
                    AllowedDrop = Ratio.FromPercent(100),
                },
                s_run with
                {
                    Fuse = ElectricCurrent.Zero,
                },
                s_run with
                {
                    Bundle = 0,
                },
                s_run with
                {
                    MinimumArea = Area.FromSquareMillimeters(-1),
                },
                s_run with
                {
                    OtherResistance = ElectricResistance.FromOhms(-1),
                },
            }
        )
            Assert.Throws<ArgumentOutOfRangeException>(() => SingleRunSizing.Size(bad));
    }
}
