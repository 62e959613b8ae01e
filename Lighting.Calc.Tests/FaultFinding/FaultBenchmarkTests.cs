using System.Collections.Immutable;
using System.Diagnostics;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>How good the choice of tests is.</summary>
/// <remarks>
/// Tests are counted, so every test costs the same here; the full run shows the choice by the table's efforts as well.
/// The full run, every fault at three severities with all orders of tests on every demo bike, is left out of the usual
/// one:
/// <c>dotnet test --filter run=full --logger "console;verbosity=detailed" -- xUnit.Explicit=on</c> prints its table.
/// </remarks>
public class FaultBenchmarkTests(ITestOutputHelper output)
{
    private const int Seed = 20;
    private const string ByEffort = "own choice by the table's efforts";

    public static TheoryData<string, string> BikesAndOrders =>
        [
            .. from name in Bikes
            from order in Orders
            select new TheoryDataRow<string, string>(name.Data, order),
        ];

    public static TheoryData<string> Bikes => [.. DemoBikes.Names, DemoBikes.TwoFuses];

    private static string[] Orders => [FaultBenchmark.Complaint, FaultBenchmark.Own, ByEffort];

    /// <summary>Sixty cases, always the same: fifteen of each bike.</summary>
    [Theory]
    [InlineData("fell-lightweight")]
    [InlineData("chapel-single")]
    [InlineData("valley-twin")]
    [InlineData(DemoBikes.TwoFuses)]
    public void A_sample_of_all_faults_is_found_by_the_tests_the_tool_chooses(string name)
    {
        const int sample = 15;
        FaultFinder finder = DemoBikes.FewestTests(name);
        var benchmark = new FaultBenchmark(finder, Seed);
        ImmutableArray<FaultMember> cases = FaultBenchmark.Cases(finder);
        BenchmarkRun[] runs =
        [
            .. Enumerable
                .Range(0, sample)
                .Select(i => benchmark.Run(cases[i * cases.Length / sample], FaultBenchmark.Complaint)),
        ];
        Report(name, FaultBenchmark.Complaint, runs);
        Require(runs, found: 0.9, wrong: 0);
    }

    // Takes minutes: only when asked for.
    [Theory(Explicit = true)]
    [MemberData(nameof(Bikes))]
    [Trait("run", "full")]
    public void Half_splitting_with_the_expected_readings_in_hand(string name)
    {
        FaultFinder finder = DemoBikes.FewestTests(name);
        var halves = new HalfSplitting(finder);
        ImmutableArray<FaultMember> cases = FaultBenchmark.Cases(finder);
        (int Tests, bool Found)[] runs =
        [
            .. cases
                .AsParallel()
                .AsOrdered()
                .Select((c, i) => halves.Run(new SimulatedBike(finder, c, new Random(Seed + i)), c))
                .OfType<(int Tests, bool Found)>(),
        ];
        int[] tests = [.. runs.Select(r => r.Tests).Order()];
        output.WriteLine(
            $"{name}, half-splitting: {runs.Length} of {cases.Length} cases with a complaint, found "
                + $"{100.0 * runs.Count(r => r.Found) / runs.Length:F1} %, tests median {tests[tests.Length / 2]}, "
                + $"nine of ten within {tests[tests.Length * 9 / 10]}, worst {tests[^1]}"
        );
        Assert.NotEmpty(runs);
    }

    // Takes minutes: only when asked for.
    [Theory(Explicit = true)]
    [MemberData(nameof(BikesAndOrders))]
    [Trait("run", "full")]
    public void Every_fault_at_three_severities_is_found_by_the_tests_the_tool_chooses(string name, string order)
    {
        var watch = Stopwatch.StartNew();
        FaultFinder finder = order == ByEffort ? DemoBikes.Finder(name) : DemoBikes.FewestTests(name);
        output.WriteLine(
            $"{name}: {finder.Model.Members.Length} severities of {finder.Model.Families.Length} faults, solved in "
                + $"{watch.Elapsed.TotalSeconds:F1} s; settings: {string.Join(" | ", finder.Settings)}"
        );
        var benchmark = new FaultBenchmark(finder, Seed);
        BenchmarkRun[] runs =
        [
            .. FaultBenchmark
                .Cases(finder)
                .Where(c => order != FaultBenchmark.Complaint || benchmark.HasComplaint(c))
                .AsParallel()
                .AsOrdered()
                .Select(c => benchmark.Run(c, order == ByEffort ? FaultBenchmark.Own : order)),
        ];
        Report(name, order, runs);
        output.WriteLine($"   {watch.Elapsed.TotalMinutes:F1} min");
        Require(runs, found: 0.95, wrong: 0.02, median: order == ByEffort ? 8 : 6);
    }

    private static void Require(BenchmarkRun[] runs, double found, double wrong, int median = 6)
    {
        Assert.True(
            runs.Count(r => r.Found) >= found * runs.Length,
            $"{runs.Count(r => r.Found)} of {runs.Length} found"
        );
        Assert.True(
            runs.Count(IsSureAndWrong) <= wrong * runs.Length,
            $"{runs.Count(IsSureAndWrong)} of {runs.Length} sure and wrong"
        );
        Assert.True(Median(runs) <= median, $"median {Median(runs)} tests");
    }

    private static bool IsSureAndWrong(BenchmarkRun run) => !run.Found && run.Probability >= 0.9;

    private static int Median(BenchmarkRun[] runs) => runs.Select(r => r.Tests).Order().ElementAt(runs.Length / 2);

    private void Report(string name, string order, BenchmarkRun[] runs)
    {
        int[] tests = [.. runs.Select(r => r.Tests).Order()],
            toName = [.. runs.Select(r => r.TestsToName).Order()];
        output.WriteLine(
            $"{name}, {order}, named: {runs.Count(r => r.IsNamedRight)} of {runs.Length} right, median "
                + $"{toName[toName.Length / 2]}, nine of ten within {toName[toName.Length * 9 / 10]}, worst "
                + $"{toName[^1]}"
        );
        if (runs.Where(r => r.Fault.Family.Consequence is not null).ToArray() is { Length: > 0 } blown)
        {
            int[] toPlace = [.. blown.Select(r => r.TestsToPlace).Order()];
            output.WriteLine(
                $"{name}, {order}, a fuse blown: {blown.Length} cases, named with its place: median "
                    + $"{toPlace[toPlace.Length / 2]}, nine of ten within {toPlace[toPlace.Length * 9 / 10]}, worst "
                    + $"{toPlace[^1]}; probability of the fuse in the end, least: "
                    + $"{blown.Min(r => r.Last.Consequence?.Probability ?? 0):F3}"
            );
        }

        output.WriteLine(
            $"{name}, {order}: {runs.Length} cases, found {100.0 * runs.Count(r => r.Found) / runs.Length:F1} %, tests "
                + $"median {Median(runs)}, mean {tests.Average():F1}, nine of ten within "
                + $"{tests[tests.Length * 9 / 10]}, worst {tests[^1]}, wrong from 0.9 on: "
                + $"{runs.Count(r => !r.Found && r.Probability >= 0.9)}, "
                + $"wrong above 0.99: {runs.Count(r => !r.Found && r.Probability > 0.99)}, slowest diagnosis "
                + $"{runs.Max(r => r.SlowestMilliseconds):F0} ms, median of slowest "
                + $"{runs.Select(r => r.SlowestMilliseconds).Order().ElementAt(runs.Length / 2):F0} ms"
        );
        foreach (BenchmarkRun slow in runs.Where(r => r.TestsToName > 5).OrderBy(r => r.TestsToName))
            output.WriteLine(
                $"   named after {slow.TestsToName}, sure after {slow.Tests}: {slow.Fault.Family.Kind} "
                    + $"'{slow.Fault.Family.PartName}' {slow.Fault.Case.Ohms:G3} Ω {slow.Fault.Case.Lamp?.Code}"
            );
        foreach (
            BenchmarkRun missed in runs.Where(r =>
                !r.Found && (r.Order is FaultBenchmark.Own or FaultBenchmark.Complaint)
            )
        )
            output.WriteLine(
                $"   missed: {missed.Fault.Family.Kind} {missed.Fault.Case.Ohms:G3} Ω, {missed.Fault.Case.Factor:G3}, "
                    + $"{missed.Fault.Case.Lamp?.Code}; after {missed.Tests} tests: {missed.Last.Summary}"
            );
    }
}
