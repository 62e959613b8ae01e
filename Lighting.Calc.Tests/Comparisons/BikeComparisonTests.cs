using Lighting.Calc.Tests.WireSizing;

namespace Lighting.Calc.Tests.Comparisons;

/// <summary>Two bikes side by side.</summary>
public class BikeComparisonTests
{
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void A_bike_beside_itself_is_the_same(string name)
    {
        Bike bike = DemoBikeTests.Read(name);
        BikeComparison same = Compare(bike, bike);
        Assert.Empty(same.FindingsGained);
        Assert.Empty(same.FindingsLost);
        Assert.DoesNotContain(same.Lamps, l => l.IsReplaced);
        Assert.All(same.Lamps, l => Assert.Equal(l.Before?.Voltage, l.After?.Voltage));
        Assert.All(same.Circuits, c => Assert.Equal(c.CurrentBefore, c.CurrentAfter));
        Assert.All(same.Fuses, f => Assert.Equal(f.Before!.Headline, f.After!.Headline));
        Assert.Equal(bike.Lamps, same.Lamps.Select(l => l.Lamp));
    }

    [Fact]
    public void Turned_round_what_was_gained_is_lost()
    {
        Bike twin = DemoBikeTests.Read("valley-twin"),
            thin =
                twin with
                {
                    Runs = [.. twin.Runs.Select(r => r with { Wire = WireTable.Of(WireConstruction.MetricCable)[1] })],
                };
        BikeComparison there = Compare(twin, thin),
            back = Compare(thin, twin);
        Assert.NotEmpty(there.FindingsGained);
        Assert.Equal(there.FindingsGained.Select(f => f.Message), back.FindingsLost.Select(f => f.Message));
        Assert.Equal(there.FindingsLost.Select(f => f.Message), back.FindingsGained.Select(f => f.Message));
        Assert.Equal(there.Circuits.Select(c => c.CurrentAfter), back.Circuits.Select(c => c.CurrentBefore));
    }

    [Fact]
    public void Two_bikes_have_the_lamps_and_fuses_of_both_by_their_names()
    {
        Bike twin = DemoBikeTests.Read("valley-twin"),
            single = DemoBikeTests.Read("chapel-single");
        single = single with { Fuses = [single.Fuses[0] with { Name = "other" }] };
        BikeComparison both = Compare(twin, single);
        Assert.Equal(
            twin.Lamps.Concat(single.Lamps).Select(l => l.Lamp).Distinct().Order(StringComparer.Ordinal),
            both.Lamps.Select(l => l.Lamp.Lamp).Order(StringComparer.Ordinal)
        );
        LampChange horn = both.Lamps.Single(l => l.Lamp.Lamp == "horn"),
            coils = both.Lamps.Single(l => l.Lamp.Lamp == "ignition coils"),
            high = both.Lamps.Single(l => l.Lamp.Lamp == "headlamp high");
        Assert.Null(horn.FittedBefore);
        Assert.Equal(single.Lamps.Single(l => l.Lamp == "horn"), horn.FittedAfter);
        Assert.True(horn.IsReplaced && horn.Before is null && horn.After is not null);
        Assert.True(coils.Before is not null && coils.After is null);
        Assert.True(high.Before!.Voltage.Volts > 12 && high.After!.Voltage.Volts < 7);
        Assert.Equal(["main", "other"], both.Fuses.Select(f => (f.After ?? f.Before)!.Fuse.Name));
        Assert.True(both.Fuses[0].After is null && both.Fuses[1].Before is null);
    }

    [Fact]
    public void A_swap_is_the_comparison_with_the_lamps_replaced()
    {
        Bike bike = DemoBikeTests.Read("valley-twin");
        LampReplacement[] swaps = [.. Swap.ToLed(bike).Replacements];
        SwapReport swap = Swap.Evaluate(bike, swaps, cancellationToken: TestContext.Current.CancellationToken);
        BikeComparison comparison = Compare(bike, Swap.Apply(bike, swaps));
        Assert.Equal(
            comparison.Lamps.Select(l => (l.Setting, l.Before?.Voltage, l.After?.Voltage)),
            swap.Comparison.Lamps.Select(l => (l.Setting, l.Before?.Voltage, l.After?.Voltage))
        );
        Assert.Equal(comparison.Circuits, swap.Comparison.Circuits);
        Assert.Equal(
            comparison.FindingsLost.Select(f => f.Message),
            swap.Comparison.FindingsLost.Select(f => f.Message)
        );
    }

    private static BikeComparison Compare(Bike before, Bike after) =>
        BikeComparison.Evaluate(before, after, cancellationToken: TestContext.Current.CancellationToken);
}
