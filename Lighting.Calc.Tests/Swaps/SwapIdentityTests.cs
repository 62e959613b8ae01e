using System.Collections.Immutable;
using FsCheck.Xunit;
using Lighting.Calc.Tests.Lists;

namespace Lighting.Calc.Tests.Swaps;

/// <summary>Swapping and swapping back is nothing at all.</summary>
public class SwapIdentityTests
{
    [Property(MaxTest = 200)]
    public void Swapping_back_gives_the_lamps_of_a_random_bike_back(int seed)
    {
        Bike bike = new RandomLists(seed).Make().Bike;
        ImmutableArray<LampReplacement> swap = RandomSwap(bike, seed);
        Bike swapped = Swap.Apply(bike, swap);
        Assert.Equal(bike.Lamps, Swap.Apply(swapped, Back(bike, swap)).Lamps);
        Assert.Equal(bike with { Lamps = [] }, swapped with { Lamps = [] });
    }

    // The bike is the same to the last bit; its figures may differ in the last one, since the runtime compiles the
    // vector powers of the lamp laws again, with fused multiply-adds, while the tests run.
    [Property(MaxTest = 12)]
    public void Swapping_back_gives_every_figure_of_a_demo_bike_back(int seed, bool twin)
    {
        BikeLists lists = SwapBikes.Demo(twin ? "valley-twin" : "chapel-single");
        ImmutableArray<LampReplacement> swap = RandomSwap(lists.Bike, seed);
        BikeReport first = SwapBikes.Check(lists.Bike),
            again = SwapBikes.Check(Swap.Apply(Swap.Apply(lists.Bike, swap), Back(lists.Bike, swap)));
        Same(first, again);
        Assert.Equal(first.Findings.Select(f => f.ToString()), again.Findings.Select(f => f.ToString()));
    }

    [Fact]
    public void The_report_of_a_swap_by_the_same_lamps_changes_nothing()
    {
        Bike bike = SwapBikes.Demo("valley-twin").Bike;
        SwapReport report = SwapBikes.Compare(
            bike,
            bike.Lamps.Select(l => new LampReplacement(l.Lamp, l.Specification))
        );
        Same(report.Before, report.After);
        Assert.All(
            report.Comparison.Circuits,
            c => Assert.Equal(c.CurrentBefore.Amperes, c.CurrentAfter.Amperes, 1e-9)
        );
        Assert.All(report.Charging, c => Assert.Equal(c.Before.Demand.Amperes, c.After.Demand.Amperes, 1e-9));
        Assert.All(report.Standing, s => Assert.Equal(s.Before.Time!.Value.Seconds, s.After.Time!.Value.Seconds, 1e-3));
        Assert.All(report.Flashers, f => Assert.Equal(1, f.Share.DecimalFractions, 12));
        Assert.Empty(report.Resistors);
        Assert.Empty(report.SneakFeeds);
        Assert.Equal(
            report.After.Findings.Select(f => f.ToString()),
            report.Findings.Where(f => f.Kind is not FindingKind.LightUnknown).Select(f => f.ToString())
        );
    }

    [Fact]
    public void A_swap_of_an_unknown_lamp_or_of_one_twice_is_refused()
    {
        Bike bike = SwapBikes.Demo("valley-twin").Bike;
        LampSpecification led = SwapBikes.Led(3);
        Assert.Contains(
            "no lamp 'fog lamp'",
            Assert.Throws<ArgumentException>(() => Swap.Apply(bike, SwapBikes.Replace(("fog lamp", led)))).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "twice",
            Assert
                .Throws<ArgumentException>(() =>
                    Swap.Apply(bike, SwapBikes.Replace(("tail lamp", led), ("Tail Lamp", led)))
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    private static ImmutableArray<LampReplacement> RandomSwap(Bike bike, int seed)
    {
        var random = new Random(seed);
        return
        [
            .. bike
                .Lamps.Where(_ => random.Next(2) == 0)
                .Select(l => new LampReplacement(
                    l.Lamp,
                    SwapBikes.Led(
                        0.5 + 10 * random.NextDouble(),
                        bike.SystemVoltage.Volts * 1.1,
                        bike.SystemVoltage.Volts * (0.4 + 0.2 * random.NextDouble())
                    )
                )),
        ];
    }

    private static void Same(BikeReport first, BikeReport again)
    {
        double[] expected = Figures(first),
            actual = Figures(again);
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], actual[i], 1e-11);
    }

    private static double[] Figures(BikeReport report) =>
        [
            .. report.Settings.SelectMany(s => s.Lamps.SelectMany(l => new[] { l.Voltage.Volts, l.Current.Amperes })),
            .. report.Settings.SelectMany(s => s.Points.Select(p => p.Voltage.Volts)),
            .. report.Fuses.Select(f => f.Steady.WorstCurrent.Amperes),
            .. report.Charging!.Balances.Select(b => b.Demand.Amperes),
            report.Charging.Ride!.NetCharge!.Value.AmpereHours,
        ];

    private static IEnumerable<LampReplacement> Back(Bike bike, IEnumerable<LampReplacement> swap) =>
        swap.Select(r => r with { Replacement = bike.Lamps.First(l => l.Lamp == r.Lamp).Specification });
}
