using System.Diagnostics;
using System.Reflection;
using Lighting.Calc.FaultFinding;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Runs alone, after the tests that run side by side.</summary>
[CollectionDefinition(nameof(NextTestSpeedTests), DisableParallelization = true)]
[Collection(nameof(NextTestSpeedTests))]
public class NextTestSpeedTests(ITestOutputHelper output)
{
    // Milliseconds; code that is not optimised takes four times as long.
    private static readonly double Limit = typeof(FaultFinder).Assembly.GetCustomAttribute<DebuggableAttribute>() is { IsJITOptimizerDisabled: true } ? 800 : 200;

    [Fact]
    public void Choosing_the_next_test_on_the_twin_takes_under_200_ms() =>
        Check([.. FaultFinderTests.HealthyReadings(DemoBikes.Finder("valley-twin")).Take(3)]);

    [Fact]
    public void So_it_does_after_many_readings_that_only_two_faults_explain()
    {
        Reading[] readings = [.. FaultFinderTests.HealthyReadings(DemoBikes.Finder("valley-twin")).Where(r => r.Instrument == Instrument.Meter && r.Point is not "rear return" and not "coil feed").Take(12)];
        Check([.. readings, DemoBikes.Meter("ignition=on; brake=on", "rear return", 5.1), DemoBikes.Meter("ignition=on", "coil feed", 8.2)]);
    }

    private void Check(Reading[] readings)
    {
        FaultFinder finder = DemoBikes.Finder("valley-twin");
        var taken = new List<double>();
        var worked = new List<double>();
        using var process = Process.GetCurrentProcess();
        for (int i = 0; i < 15; i++)
        {
            process.Refresh();
            TimeSpan before = process.TotalProcessorTime;
            var watch = Stopwatch.StartNew();
            Assert.NotNull(finder.Diagnose(readings, TestContext.Current.CancellationToken).Next);
            taken.Add(watch.Elapsed.TotalMilliseconds);
            process.Refresh();
            worked.Add((process.TotalProcessorTime - before).TotalMilliseconds);
        }

        // The fastest is what the work takes; the rest is what else the machine does. Where that is busy throughout, what all
        // processors together worked is the most that it would take.
        output.WriteLine($"{taken.Min():F0} ms at best, {taken.Order().ElementAt(7):F0} ms in the middle; {worked.Min():F0} ms of processors");
        Assert.True(Math.Min(taken.Min(), worked.Min()) < Limit, $"{taken.Min():F0} ms, {worked.Min():F0} ms of processors");
    }
}
