// Choosing the next test on the 12-volt twin: after three readings of a healthy bike, and after many that only two faults explain.
using BenchmarkDotNet.Attributes;
using Lighting.Calc.FaultFinding;
using Lighting.Calc.Harness;
using Lighting.Calc.Lists;
using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.FaultFinding;
using UnitsNet;

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
        Reading[] healthy = [.. Healthy()];
        few = [.. healthy.Take(3)];
        twoFaults =
        [
            .. healthy.Where(r => r.Point is not "rear return" and not "coil feed").Take(12),
            Meter(Condition.Parse("ignition=on; brake=on"), "rear return", 5.1), Meter(Condition.Parse("ignition=on"), "coil feed", 8.2),
        ];
    }

    [Benchmark(Baseline = true)]
    public Diagnosis FewReadings() => finder.Diagnose(few);

    [Benchmark]
    public Diagnosis ManyReadingsOfTwoFaults() => finder.Diagnose(twoFaults);

    private IEnumerable<Reading> Healthy()
    {
        var bike = new HealthyBike(finder);
        return finder.Settings.SelectMany(setting => bike.In(setting).Points.Where(p => p.Point != Bike.BatteryMinus)
            .Select(point => Meter(setting.AsCondition(), point.Point, Math.Round(point.Voltage.Volts, 2))));
    }

    private static Reading Meter(Condition when, string point, double volts) =>
        new() { When = when, Point = point, Instrument = Instrument.Meter, Voltage = ElectricPotential.FromVolts(volts) };
}
