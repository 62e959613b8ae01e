// Choosing the next test on the 12-volt twin: after three readings of a healthy bike, and after many that only two
// faults explain.
using BenchmarkDotNet.Attributes;
using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.FaultFinding;

namespace Lighting.Calc.Benchmarks;

public class NextTest
{
    private FaultFinder finder = null!;
    private Reading[] few = [];
    private Reading[] twoFaults = [];

    [GlobalSetup]
    public void Setup()
    {
        finder = new FaultFinder(BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike);
        Reading[] healthy = [.. new HealthyBike(finder).Readings()];
        few = [.. healthy.Take(3)];
        twoFaults =
        [
            .. healthy
                .Where(r => r.Instrument == Instrument.Meter && r.Point is not "rear return" and not "coil feed")
                .Take(12),
            ReadingOf.Meter("ignition=on; brake=on", "rear return", 5.1),
            ReadingOf.Meter("ignition=on", "coil feed", 8.2),
        ];
    }

    [Benchmark(Baseline = true)]
    public Diagnosis FewReadings() => finder.Diagnose(few);

    [Benchmark]
    public Diagnosis ManyReadingsOfTwoFaults() => finder.Diagnose(twoFaults);

    /// <summary>What one call of <c>faults</c> takes after reading the lists: the finder, one symptom, the next
    /// test.</summary>
    [Benchmark]
    public Diagnosis WholeCall() => new FaultFinder(finder.Bike).Diagnose([few[0]]);
}
