namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>What a workshop meets besides single listed faults: faults that are not listed, and two at once. Each is
/// led by the tests that the tool chooses, from the lamps that look wrong.</summary>
public class HardCaseTests(ITestOutputHelper output)
{
    private const string Twin = "valley-twin";
    private const double Sure = 0.9;
    private static int[] Seeds => [5, 6, 7, 8];

    /// <summary>One quick one, the others take seconds each.</summary>
    public static IEnumerable<TheoryDataRow<int>> SomeUnlisted => Rows(13, 3, 5, 8, 10);

    public static IEnumerable<TheoryDataRow<int>> SomePairs => Rows(5, 1, 2, 6, 9);

    // Of four bikes drawn otherwise, each of twenty; only when asked for, with the full run of the benchmark.
    [Fact(Explicit = true)]
    [Trait("run", "full")]
    public void Of_twenty_faults_that_are_not_listed_at_most_one_ends_sure_of_a_wrong_one()
    {
        int[] wrong = [.. Seeds.Select(s => Count(UnlistedFaults.All.Count, i => IsSureAndWrong(Unlisted(i, s))))];
        Assert.True(wrong.Max() <= 1, $"wrong: {string.Join(", ", wrong)}");
    }

    [Theory]
    [MemberData(nameof(SomeUnlisted))]
    public void A_fault_that_is_not_listed_ends_open_or_at_its_place(int index) =>
        Assert.False(IsSureAndWrong(Unlisted(index)));

    // The same of ten pairs.
    [Fact(Explicit = true)]
    [Trait("run", "full")]
    public void Of_ten_pairs_of_listed_faults_eight_are_named()
    {
        int[] named = [.. Seeds.Select(s => Count(10, i => Pair(i, s).Found))];
        Assert.True(named.Sum() >= 8 * named.Length, $"named: {string.Join(", ", named)}");
    }

    [Theory]
    [MemberData(nameof(SomePairs))]
    public void Two_faults_at_once_are_both_named(int index) => Assert.True(Pair(index).Found);

    // A lamp that was once misread leaves second faults in question that change hardly anything.
    [Fact]
    public void A_fault_is_named_while_only_a_second_one_is_in_question()
    {
        FaultFinder finder = DemoBikes.FewestTests("chapel-single");
        FaultFamily leak = finder.Model.Families.Single(f =>
            f.Kind == FaultKind.LeakToFrame && f.PartName == Bike.BatteryMinus
        );
        BenchmarkRun run = new FaultBenchmark(finder, seed: 20).Run(
            new FaultMember(leak, leak.Cases[0] with { Ohms = 4.5 }),
            FaultBenchmark.Complaint
        );
        output.WriteLine($"{run.TestsToName}, {run.Tests} tests: {run.Last.Summary}");
        Assert.True(run.IsNamedRight && run.TestsToName <= 10, $"{run.TestsToName} tests");
        Diagnosis then = finder.Diagnose(
            run.Readings.Take(run.Readings.Count - 1),
            TestContext.Current.CancellationToken
        );
        Assert.NotNull(then.Repair);
    }

    [Fact]
    public void A_short_behind_the_fuse_of_a_bike_with_LEDs_is_found()
    {
        Bike twin = DemoBikes.Load(Twin);
        var finder = new FaultFinder(twin with { Lamps = [.. twin.Lamps.Select(AsLed)] });
        FaultFamily family = finder.Model.Families.Single(f =>
            f.Kind == FaultKind.ShortToFrame && f.PartName == "stop feed"
        );
        var bike = new SimulatedBike(finder, new FaultMember(family, family.Cases[0]), new Random(3));
        BenchmarkRun run = new FaultBenchmark(finder, seed: 3).Run(
            bike,
            FaultBenchmark.Complaint,
            g => g.Alternatives.Any(a => a.Faults is [{ Kind: FaultKind.ShortToFrame, Part: "stop feed" }])
        );
        output.WriteLine($"{run.Tests} tests: {run.Last.Summary}");
        Assert.True(run.Found, run.Last.Summary);
        Assert.True(run.Last.Ranked[0].Alternatives.Length <= 3, run.Last.Summary);
    }

    private static FittedLamp AsLed(FittedLamp lamp) =>
        lamp with
        {
            Specification = Calc.LampSpecification.FromPower(
                Calc.LampType.Led,
                UnitsNet.ElectricPotential.FromVolts(13.5),
                lamp.Specification.ReferencePower / 8,
                UnitsNet.ElectricPotential.FromVolts(8)
            ),
        };

    private static IEnumerable<TheoryDataRow<int>> Rows(int quick, params int[] slow) =>
        [new TheoryDataRow<int>(quick), .. slow.Select(i => new TheoryDataRow<int>(i).WithTrait("time", "long"))];

    private static bool IsSureAndWrong(BenchmarkRun run) => !run.Found && run.Probability >= Sure;

    private static int Count(int cases, Func<int, bool> isMeant) =>
        Enumerable.Range(0, cases).AsParallel().Count(isMeant);

    private BenchmarkRun Unlisted(int index, int seed = 5)
    {
        (string name, Func<Bike, Bike> altered, string[] parts) = UnlistedFaults.All[index];
        FaultFinder finder = DemoBikes.FewestTests(Twin);
        BenchmarkRun run = new FaultBenchmark(finder, seed).Run(
            new SimulatedBike(finder, finder.Model.Members[0], new Random(seed), null, altered),
            FaultBenchmark.Complaint,
            g =>
                g.Best.Faults[0].Kind == FaultKind.NotListed
                || g.Alternatives.Any(a => a.Faults.All(f => parts.Contains(f.Part)))
        );
        output.WriteLine(
            $"{(IsSureAndWrong(run) ? "WRONG" : run.Found ? "right" : "open")} {name}, seed {seed}, {run.Tests} tests: "
                + $"{run.Last.Summary}"
        );
        return run;
    }

    private BenchmarkRun Pair(int index, int seed = 7)
    {
        FaultFinder finder = DemoBikes.FewestTests(Twin);
        const double open = double.PositiveInfinity;
        (FaultMember A, FaultMember B)[] pairs =
        [
            (
                Of(FaultKind.HighResistanceEarth, "rear earth", 3),
                Of(FaultKind.HighResistanceJoint, "high beam wire", 2)
            ),
            (Of(FaultKind.LampDead, "left indicators"), Of(FaultKind.HighResistanceJoint, "stop wire", open)),
            (Of(FaultKind.HighResistanceEarth, "frame strap", 0.8), Of(FaultKind.LampDead, "tail lamp")),
            (
                Of(FaultKind.HighResistanceJoint, "flasher feed", 4),
                Of(FaultKind.HighResistanceEarth, "headlamp earth", 1.5)
            ),
            (Of(FaultKind.BatteryFlat, "battery"), Of(FaultKind.HighResistanceJoint, "panel wire", open)),
            (Of(FaultKind.HighResistanceJoint, "low beam wire", 3), Of(FaultKind.LampDead, "stop lamp")),
            (
                Of(FaultKind.ContactNeverOpens, "brake (brake in to brake out)"),
                Of(FaultKind.HighResistanceEarth, "panel earth", open)
            ),
            (Of(FaultKind.HighResistanceJoint, "tail wire", 12), Of(FaultKind.HighResistanceJoint, "right wire", 6)),
            (Of(FaultKind.HighResistanceFuseHolder, "main", 0.5), Of(FaultKind.LampDead, "speedometer lamp")),
            (
                Of(FaultKind.CrossedWires, "left wire and right wire"),
                Of(FaultKind.HighResistanceEarth, "rear earth", open)
            ),
        ];
        (FaultMember a, FaultMember b) = pairs[index];
        BenchmarkRun run = new FaultBenchmark(finder, seed).Run(
            new SimulatedBike(finder, a, new Random(seed), b),
            FaultBenchmark.Complaints,
            g => Names(g, a) && Names(g, b)
        );
        output.WriteLine(
            $"{(run.Found ? "named" : "MISSED")} {a.Family.Subject} with {b.Family.Subject}, seed {seed}, "
                + $"{run.Tests} tests, "
                + $"{run.SlowestMilliseconds:F0} ms: {run.Last.Summary}"
        );
        return run;

        FaultMember Of(FaultKind kind, string part, double ohms = 0)
        {
            FaultFamily family = finder.Model.Families.First(f => f.Kind == kind && f.PartName == part);
            return new FaultMember(family, ohms > 0 ? family.Cases[0] with { Ohms = ohms } : family.Cases[^1]);
        }
    }

    private static bool Names(FaultGroup group, FaultMember fault) =>
        group.Alternatives.Any(a => a.Faults.Any(f => f.Kind == fault.Family.Kind && f.Part == fault.Family.PartName));
}
