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

    /// <summary>From this probability on the tool gives the repair.</summary>
    public const double Named = 0.8;

    /// <summary>The tool chooses every test.</summary>
    public const string Own = "own choice";

    /// <summary>The same, after the first lamp that does not look right, where one does: what the rider came
    /// with.</summary>
    public const string Complaint = "own choice from a complaint";

    /// <summary>The same after every lamp that does not look right.</summary>
    public const string Complaints = "own choice from all complaints";

    /// <summary>Probe with the meter in the order of the lists.</summary>
    public const string List = "list order";

    // A fault that is noticed less surely than this brings no bike to the workshop.
    private const double Noticed = 0.2;

    /// <summary>Every single fault that somebody notices, at up to three severities, off the grid the finder knows
    /// where they are resistances.</summary>
    public static ImmutableArray<FaultMember> Cases(FaultFinder finder)
    {
        var cases = ImmutableArray.CreateBuilder<FaultMember>();
        foreach (
            FaultFamily family in finder.Model.Families.Where(f =>
                f.Kind is not FaultKind.None and not FaultKind.NotListed
            )
        )
        {
            FaultCase any = family.Cases[0];
            switch (family.Kind)
            {
                case FaultKind.HighResistanceJoint
                or FaultKind.HighResistanceEarth
                or FaultKind.HighResistanceContact
                or FaultKind.HighResistanceLampHolder
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
                case FaultKind.LeakToFrame:
                    cases.AddRange(new[] { 36, 4.5 }.Select(r => new FaultMember(family, any with { Ohms = r })));
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

        return [.. cases.Where(c => IsNoticed(finder.Model, c))];
    }

    /// <summary>Whether some lamp of a bike with a fault does not look as it should, or its battery is flat in the
    /// morning: what a rider comes with.</summary>
    public bool HasComplaint(FaultMember fault) => FirstComplaint(Drawn(fault)) is not null;

    public BenchmarkRun Run(FaultMember fault, string order)
    {
        int family = finder.Model.Families.IndexOf(fault.Family);
        return Run(Drawn(fault), order, g => IsTrue(g, family), fault.Family.Consequence) with { Fault = fault };
    }

    private SimulatedBike Drawn(FaultMember fault) =>
        new(
            finder,
            fault,
            new Random(
                seed
                    + 7919 * finder.Model.Families.IndexOf(fault.Family)
                    + (int)Math.Min(1e6, 100 * fault.Case.Ohms)
                    + (int)(1000 * fault.Case.Factor)
            )
        );

    /// <summary>Lets an order of tests find what is wrong with a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="order">The order.</param>
    /// <param name="isTrue">Whether a group of faults is what is wrong.</param>
    /// <param name="consequence">What the fault leads to and is named by itself; null for nothing.</param>
    public BenchmarkRun Run(
        SimulatedBike bike,
        string order,
        Func<FaultGroup, bool> isTrue,
        string? consequence = null
    )
    {
        var readings = new List<Reading>();
        if (order == Complaint && FirstComplaint(bike) is { } complaint)
            readings.Add(complaint);
        if (order == Complaints)
            readings.AddRange(AllComplaints(bike).DistinctBy(r => r.Point));
        bool own = order is Own or Complaint or Complaints;
        IEnumerator<TestPlace> tests = ListOrder().GetEnumerator();
        double slowest = 0;
        int taken = 0;
        (int Tests, bool IsRight)? named = null,
            placed = null;
        while (true)
        {
            var watch = Stopwatch.StartNew();
            Diagnosis diagnosis = finder.Diagnose(readings, seekNext: own);
            slowest = Math.Max(slowest, watch.Elapsed.TotalMilliseconds);
            if (placed is null && readings.Count > 0 && diagnosis.Ranked[0].Probability >= Named)
                placed = (taken, isTrue(diagnosis.Ranked[0]));
            if (placed is null && diagnosis.Repair is not null)
                placed = (taken, isTrue(diagnosis.Certain!.Value.Group));
            if (named is null && diagnosis.Consequence is { Probability: >= Named } led)
                named = (taken, led.Words == consequence);
            named ??= placed;
            TestPlace? next =
                own ? diagnosis.Next?.Place
                : tests.MoveNext() ? tests.Current
                : null;
            if (
                taken >= MostTests
                || next is not { } asked
                || (readings.Count > 0 && diagnosis.Ranked[0].Probability >= enough)
            )
                return new BenchmarkRun(
                    finder.Model.Members[0],
                    order,
                    taken,
                    named?.Tests ?? taken,
                    placed?.Tests ?? taken,
                    named?.IsRight ?? isTrue(diagnosis.Ranked[0]),
                    isTrue(diagnosis.Ranked[0]),
                    diagnosis.Ranked[0].Probability,
                    diagnosis,
                    readings,
                    slowest
                );
            taken++;
            readings.AddRange(bike.Answer(asked));
        }
    }

    private static bool IsNoticed(FaultModel model, FaultMember fault)
    {
        int first = model.FirstOf[model.Families.IndexOf(fault.Family)];
        return model.Noticed[first + Nearest(fault)] >= Noticed;
    }

    private static int Nearest(FaultMember fault) =>
        Enumerable
            .Range(0, fault.Family.Cases.Length)
            .MinBy(c =>
                fault.Family.Cases[c] is var its && its.Ohms == fault.Case.Ohms && its.Factor == fault.Case.Factor ? 0
                : double.IsInfinity(its.Ohms) || double.IsInfinity(fault.Case.Ohms) ? 1e9
                : Math.Abs(Math.Log((its.Ohms + 1e-9) / (fault.Case.Ohms + 1e-9)))
                    + Math.Abs(its.Factor - fault.Case.Factor)
            );

    private bool IsTrue(FaultGroup group, int family)
    {
        FaultFamily searched = finder.Model.Families[family];
        return group.Alternatives.Any(a =>
            a.Faults is [var f] && f.Kind == searched.Kind && f.Part == searched.PartName
        );
    }

    private Reading? FirstComplaint(SimulatedBike bike) =>
        AllComplaints(bike).FirstOrDefault() ?? (finder.EngineSpeed is null ? Drain(bike) : null);

    private IEnumerable<Reading> AllComplaints(SimulatedBike bike)
    {
        foreach (Setting setting in finder.Settings)
        {
            OperatingPoint healthy = Healthy(setting);
            for (int l = 0; l < finder.Bike.Lamps.Length; l++)
            {
                if (!finder.Model.GivesLight(l))
                    continue;
                Reading reading = bike.Look(setting, l);
                if (reading.Seen != (Lights(healthy, l) ? Brightness.Normal : Brightness.Dark))
                    yield return reading;
            }
        }
    }

    // The battery is flat in the morning: the current with everything off.
    private Reading? Drain(SimulatedBike bike)
    {
        const double drain = 0.05;
        Reading reading = bike.Read(
            new TestPlace(finder.Model.AllOff, Instrument.Ammeter, finder.Model.Circuit.Fuses.Length)
        );
        return reading.Current!.Value.Amperes > drain ? reading : null;
    }

    private OperatingPoint Healthy(Setting setting) => new HealthyBike(finder).In(setting);

    private bool Lights(OperatingPoint healthy, int lamp) =>
        Math.Abs(healthy.Lamps[lamp].Voltage.Volts) > 0.5 * finder.Bike.BatteryVoltage.Volts;

    // Probe every point of the lists with the meter, setting by setting.
    private IEnumerable<TestPlace> ListOrder()
    {
        foreach (Setting setting in finder.Settings)
            foreach (string point in finder.Model.Circuit.Points.Where(p => p != Bike.BatteryMinus))
                yield return new TestPlace(setting, Instrument.Meter, finder.Model.Circuit.NodeOf(point));
    }
}
