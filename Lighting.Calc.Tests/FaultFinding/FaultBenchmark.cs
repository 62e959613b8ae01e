using System.Collections.Immutable;
using System.Diagnostics;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Puts faults into a bike, lets an order of tests find them, and counts.</summary>
internal sealed class FaultBenchmark(FaultFinder finder, int seed, double enough = FaultBenchmark.Enough)
{
    /// <summary>A search ends when a group has this probability, when no test tells anything, or after
    /// <see cref="MostTests"/>.</summary>
    public const double Enough = 0.9;

    public const int MostTests = 40;

    /// <summary>The tool chooses every test.</summary>
    public const string Own = "own choice";

    /// <summary>The same, after the first lamp that does not look right, where one does: what the rider came
    /// with.</summary>
    public const string Complaint = "own choice from a complaint";

    /// <summary>Look for a lamp that is not right, halve its way.</summary>
    public const string HalfSplit = "half-splitting";

    /// <summary>Probe with the meter in the order of the lists.</summary>
    public const string List = "list order";

    /// <summary>Every single fault at up to three severities, off the grid the finder knows where they are
    /// resistances.</summary>
    public static ImmutableArray<FaultMember> Cases(FaultFinder finder)
    {
        var cases = ImmutableArray.CreateBuilder<FaultMember>();
        foreach (FaultFamily family in finder.Model.Families.Where(f => f.Kind != FaultKind.None))
        {
            FaultCase any = family.Cases[0];
            switch (family.Kind)
            {
                case FaultKind.HighResistanceJoint
                or FaultKind.HighResistanceEarth
                or FaultKind.HighResistanceContact
                or FaultKind.CoilWindingFault:
                    cases.AddRange(
                        new[] { 1.2, 8, double.PositiveInfinity }.Select(r => new FaultMember(
                            family,
                            any with
                            {
                                Ohms = r,
                            }
                        ))
                    );
                    break;
                case FaultKind.HighResistanceFuseHolder:
                    cases.AddRange(new[] { 0.35, 1.2, 8 }.Select(r => new FaultMember(family, any with { Ohms = r })));
                    break;
                case FaultKind.BatteryHighResistance:
                    cases.AddRange(new[] { 0.35, 1.2, 5 }.Select(r => new FaultMember(family, any with { Ohms = r })));
                    break;
                case FaultKind.LowCoilOutput:
                    cases.AddRange(
                        new[] { 0.78, 0.62, 0.4 }.Select(f => new FaultMember(family, any with { Factor = f }))
                    );
                    break;
                case FaultKind.BatteryFlat:
                    cases.AddRange(
                        new[] { 0.87, 0.72, 0.5 }.Select(f => new FaultMember(family, any with { Factor = f }))
                    );
                    break;
                default:
                    cases.AddRange(family.Cases.Select(c => new FaultMember(family, c)));
                    break;
            }
        }

        return cases.ToImmutable();
    }

    public BenchmarkRun Run(FaultMember fault, string order)
    {
        int family = finder.Model.Families.IndexOf(fault.Family);
        var random = new Random(
            seed + 7919 * family + (int)Math.Min(1e6, 100 * fault.Case.Ohms) + (int)(1000 * fault.Case.Factor)
        );
        var bike = new SimulatedBike(finder, fault, random);
        var readings = new List<Reading>();
        if (order == Complaint && FirstComplaint(bike) is { } complaint)
            readings.Add(complaint);
        bool own = order is Own or Complaint;
        IEnumerator<FaultTest> tests = (order == HalfSplit ? HalfSplitting(readings) : ListOrder()).GetEnumerator();
        double slowest = 0;
        while (true)
        {
            var watch = Stopwatch.StartNew();
            Diagnosis diagnosis = finder.Diagnose(readings, seekNext: own);
            slowest = Math.Max(slowest, watch.Elapsed.TotalMilliseconds);
            FaultTest? next =
                own ? diagnosis.Next?.Test
                : tests.MoveNext() ? tests.Current
                : null;
            if (
                readings.Count >= MostTests
                || next is null
                || (readings.Count > 0 && diagnosis.Ranked[0].Probability >= enough)
            )
                return new BenchmarkRun(
                    fault,
                    order,
                    readings.Count,
                    IsTrue(diagnosis.Ranked[0], family),
                    diagnosis.Ranked[0].Probability,
                    diagnosis,
                    readings,
                    slowest
                );
            readings.Add(bike.Read(next));
        }
    }

    private bool IsTrue(FaultGroup group, int family)
    {
        FaultFamily searched = finder.Model.Families[family];
        return group.Alternatives.Any(a =>
            a.Faults is [var f] && f.Kind == searched.Kind && f.Part == searched.PartName
        );
    }

    private Reading? FirstComplaint(SimulatedBike bike)
    {
        foreach (Setting setting in finder.Settings)
        {
            OperatingPoint healthy = Healthy(setting);
            for (int l = 0; l < finder.Bike.Lamps.Length; l++)
            {
                if (!finder.Model.GivesLight(l))
                    continue;
                Reading reading = bike.Read(new FaultTest(setting, finder.Bike.Lamps[l].Lamp, Instrument.Visual));
                if (reading.Seen != (Lights(healthy, l) ? Brightness.Normal : Brightness.Dark))
                    return reading;
            }
        }

        return null;
    }

    private OperatingPoint Healthy(Setting setting) => new HealthyBike(finder).In(setting);

    private bool Lights(OperatingPoint healthy, int lamp) =>
        Math.Abs(healthy.Lamps[lamp].Voltage.Volts) > 0.5 * finder.Bike.BatteryVoltage.Volts;

    // Probe every point of the lists with the meter, setting by setting.
    private IEnumerable<FaultTest> ListOrder()
    {
        foreach (Setting setting in finder.Settings)
            foreach (string point in finder.Model.Circuit.Points.Where(p => p != Bike.BatteryMinus))
                yield return new FaultTest(setting, point, Instrument.Meter);
    }

    // Look at the lamps in turn; from the first that is not as it should be, halve the way from the battery through it
    // and back.
    private IEnumerable<FaultTest> HalfSplitting(List<Reading> readings)
    {
        Bike bike = finder.Bike;
        foreach (Setting setting in finder.Settings)
        {
            OperatingPoint healthy = Healthy(setting);
            for (int l = 0; l < bike.Lamps.Length; l++)
            {
                FittedLamp lamp = bike.Lamps[l];
                if (!finder.Model.GivesLight(l))
                    continue;
                yield return new FaultTest(setting, lamp.Lamp, Instrument.Visual);
                Brightness seen = readings[^1].Seen!.Value;
                if (seen == (Lights(healthy, l) ? Brightness.Normal : Brightness.Dark))
                    continue;
                string[] way = Way(bike, lamp, setting);
                int low = 0,
                    high = way.Length - 1;
                while (high - low > 1)
                {
                    int middle = (low + high) / 2;
                    yield return new FaultTest(setting, way[middle], Instrument.Meter);
                    double volts = readings[^1].Voltage!.Value.Volts;
                    double expected = healthy.Points.Single(p => p.Point == way[middle]).Voltage.Volts;
                    bool feedSide = middle <= Array.IndexOf(way, lamp.Feed!);
                    // The volts of a coil are not held as those of a battery are.
                    bool good =
                        Math.Abs(volts - expected)
                        < (finder.EngineSpeed is null ? 0.04 : 0.12) * bike.BatteryVoltage.Volts;
                    if (good == feedSide)
                        low = middle;
                    else
                        high = middle;
                }

                foreach (string point in new[] { way[low], way[high] })
                    yield return new FaultTest(setting, point, Instrument.TestLamp);
            }
        }

        foreach (FaultTest test in ListOrder())
            yield return test;
    }

    private static string[] Way(Bike bike, FittedLamp lamp, Setting setting)
    {
        var graph = new HarnessGraph(bike);
        ContactSet closed = graph.Switches.ClosedIn(setting);
        return
        [
            .. Points(graph.Live, graph.NumberOf(lamp.Feed!)),
            .. Points(graph.NumberOf(lamp.Return!), graph.Earth),
        ];

        IEnumerable<string> Points(int start, int end)
        {
            int at = start;
            return
            [
                graph.Points[start],
                .. graph
                    .From(
                        start,
                        p =>
                            p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay
                            : p.Joins(closed) ? 1
                            : 100
                    )
                    .PathTo(end)
                    .Select(p => graph.Points[at = p.Other(at)]),
            ];
        }
    }
}
