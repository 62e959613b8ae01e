using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Lighting.Calc.Tests.Fuses;

namespace Lighting.Calc.Tests.WireSizing;

/// <summary>What <c>wire</c> chooses, <c>check</c> never finds unsuitable.</summary>
public class SizedBikeSuitsTests
{
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    public void A_demo_bike_with_the_chosen_wires_suits(string name) => Suits(DemoBikeTests.Read(name));

    // Not the commuter, whose lamps behind a ballast in series drop more than any wire.
    [Theory]
    [InlineData("three-phase", Traits = ["time", "long"])]
    [InlineData("builder")]
    [InlineData("postal-trike", Traits = ["time", "long"])]
    [InlineData("fenland-six")]
    public void A_foreign_bike_with_the_chosen_wires_suits(string name) =>
        Suits(BikeLists.Read(Path.Combine("Lighting.Calc.Tests", "ForeignBikes", name)).Value.Bike);

    // Found by the property below: shorts that clear with the smallest wires, and with those chosen for the drop do
    // not.
    [Theory]
    [InlineData(7.5, 89, CableKind.ThinWall)]
    public void A_round_bike_whose_short_is_let_through_by_larger_wires_suits(
        double rating,
        int decimetres,
        CableKind cable
    ) => Suits(FuseBike.Round(rating, tailMetres: decimetres / 10.0) with { Cable = cable });

    [Property(MaxTest = 40)]
    public Property A_round_bike_with_the_chosen_wires_suits() =>
        Prop.ForAll(
            Gen.Elements(5.0, 7.5, 10, 15, 20, 30).ToArbitrary(),
            Gen.Choose(1, 400).ToArbitrary(),
            Gen.Elements<CableKind?>(null, CableKind.Ordinary, CableKind.ThinWall, CableKind.FreeAir).ToArbitrary(),
            (rating, decimetres, cable) =>
                Suits(FuseBike.Round(rating, tailMetres: decimetres / 10.0) with { Cable = cable })
        );

    // Trees, loops, parallel wires, either earth, every kind of load, every kind of cable.
    [Property(MaxTest = 60)]
    public Property Any_small_harness_with_the_chosen_wires_suits() =>
        Prop.ForAll(
            Gen.Choose(1, 1_000_000).ToArbitrary(),
            Gen.Elements<CableKind?>(null, CableKind.Ordinary, CableKind.ThinWall).ToArbitrary(),
            Gen.Choose(1, 4).ToArbitrary(),
            (seed, cable, sizes) =>
            {
                var random = new Random(seed);
                Suits(RandomHarness.Make(random, 2 + random.Next(5)) with { Cable = cable }, sizes);
            }
        );

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3, Traits = ["time", "long"])]
    public void A_generated_bike_with_the_chosen_wires_suits(int seed) =>
        Suits(
            BikeLists
                .Read(
                    new Benchmarks.BikeGenerator(seed)
                        .Lists(seed)
                        .Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text))
                )
                .Value.Bike
        );

    // Wire, fuse rating, short and drop; a load too large for its fuse is not the wires' to remedy.
    private static void Suits(Bike bike, int? mostSizes = null)
    {
        WireSizingResult result = DemoBikeTests.Size(bike, new WireSizingOptions { MostSizes = mostSizes });
        if (result.Sized is not { } sized)
            return;
        BikeReport report = BikeCheck.Evaluate(sized, cancellationToken: TestContext.Current.CancellationToken);
        Assert.All(
            report.Fuses,
            f =>
                Assert.True(
                    f.Verdict is FuseVerdict.Suits or FuseVerdict.Overloaded or FuseVerdict.NotJudged,
                    f.Headline
                )
        );
        Assert.DoesNotContain(
            report.Findings,
            f =>
                f.Severity == Severity.Fault
                && (f.Kind != FindingKind.VoltageDropTooLarge || result.Unmet.IsEmpty)
                && f.Kind
                    is FindingKind.VoltageDropTooLarge
                        or FindingKind.WiresRatedBelowFuse
                        or FindingKind.ShortDoesNotClear
        );
    }
}
