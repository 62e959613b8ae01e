using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every fault of every severity and what each test reads under it. Settings are solved when first asked for,
/// then kept.</summary>
internal sealed class FaultModel
{
    private readonly ConcurrentDictionary<Setting, Lazy<SettingPredictions>> _settings = new();
    private readonly double _weights;

    public FaultModel(FaultCircuit circuit, CancellationToken cancellationToken)
        : this(
            circuit,
            (cover, draws) => FaultCatalog.Of(circuit, HealthyCurrents.Of(circuit, draws, cover)),
            cancellationToken
        )
    { }

    private FaultModel(
        FaultCircuit circuit,
        Func<ImmutableArray<Setting>, ToleranceDraws, ImmutableArray<FaultFamily>> families,
        CancellationToken cancellationToken
    )
    {
        Circuit = circuit;
        Draws = new ToleranceDraws(circuit);
        Cover = SettingCover.Of(circuit.Bike, circuit.Graph, circuit.Options.Within, cancellationToken);
        Families = families(Cover, Draws);
        Members = [.. Families.SelectMany(f => f.Cases.Select(c => new FaultMember(f, c)))];
        FamilyOf = [.. Families.SelectMany((f, i) => f.Cases.Select(_ => i))];
        FirstOf = [.. Families.Select((_, f) => Families.Take(f).Sum(g => g.Cases.Length))];
        _weights = Families.Sum(f => f.Weight);
        Parts = MeasuredPart.Of(circuit);
        AllOff = SettingEnumeration.Held(circuit.Bike, Condition.Always);
    }

    public FaultCircuit Circuit { get; }

    public ToleranceDraws Draws { get; }

    public ImmutableArray<FaultFamily> Families { get; }

    /// <summary>The severities of all families; "nothing" comes first.</summary>
    public ImmutableArray<FaultMember> Members { get; }

    /// <summary>Index of the family of each severity.</summary>
    public ImmutableArray<int> FamilyOf { get; }

    /// <summary>Index of the first severity of each family.</summary>
    public ImmutableArray<int> FirstOf { get; }

    public ImmutableArray<MeasuredPart> Parts { get; }

    /// <summary>The fewest settings that cover everything.</summary>
    public ImmutableArray<Setting> Cover { get; }

    public Setting AllOff { get; }

    /// <summary>The same with no fault but "nothing".</summary>
    public static FaultModel Healthy(FaultCircuit circuit, CancellationToken cancellationToken) =>
        new(circuit, (_, _) => [new NoFault(circuit)], cancellationToken);

    /// <summary>Prior probability of a family.</summary>
    public double PriorOf(FaultFamily family) => family.Weight / _weights;

    /// <summary>Every test of the sheet: all instruments in the settings of <see cref="Cover"/>, the ohmmeter on lamps
    /// and wires.</summary>
    public IEnumerable<TestPlace> Tests()
    {
        foreach (Setting setting in Cover)
        {
            for (int p = 0; p < Circuit.Points.Length; p++)
            {
                if (Name.Equal(Circuit.Points[p], Bike.BatteryMinus))
                    continue;
                yield return new TestPlace(setting, Instrument.Meter, p);
                yield return new TestPlace(setting, Instrument.TestLamp, p);
            }

            for (int f = 0; f < Circuit.Fuses.Length; f++)
                yield return new TestPlace(setting, Instrument.Ammeter, f);
            for (int l = 0; l < Circuit.Lamps.Length; l++)
                if (GivesLight(l))
                    yield return new TestPlace(setting, Instrument.Visual, l);
        }

        for (int i = 0; i < Parts.Length; i++)
            if (Parts[i].Contact < 0 && IsKnownToOhmmeter(Parts[i]))
                foreach (Setting setting in Parts[i].Lamp >= 0 ? TowardsBattery(Parts[i].Lamp) : [AllOff])
                    yield return new TestPlace(setting, Instrument.Ohmmeter, i);
    }

    // Everything off, then one switch after the other closed on the way from the lamp to the battery: where the
    // resistance falls to almost zero, the section just joined touches the frame.
    private List<Setting> TowardsBattery(int lamp)
    {
        Bike bike = Circuit.Bike;
        List<Setting> settings = [AllOff];
        HarnessGraph graph = Circuit.Graph;
        ImmutableArray<HarnessPart> way = graph
            .From(graph.Lamps[lamp].A, p => p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1)
            .PathTo(graph.Live);
        var held = new Dictionary<string, string>(Name.Comparer);
        foreach (HarnessPart part in way.Where(p => p.Kind == HarnessPartKind.Contact))
        {
            SwitchContact contact = bike.Switches[part.Index];
            if (held.TryAdd(contact.Switch, contact.ClosedIn[0]))
                settings.Add(
                    new Setting(
                        AllOff.Positions.Select(p =>
                            held.TryGetValue(p.Switch, out string? position) ? p with { Position = position } : p
                        )
                    )
                );
        }

        return settings;
    }

    /// <summary>Whether a lamp is one to look at, not an ignition or a horn.</summary>
    public bool GivesLight(int lamp) =>
        Circuit.Bike.Lamps[lamp].Specification is { } s && s.RelativeLightAt(s.ReferenceVoltage) is not null;

    /// <summary>Whether the lists say what an ohmmeter shows on a part.</summary>
    public bool IsKnownToOhmmeter(MeasuredPart part) =>
        part.Lamp < 0 || ColdNetwork.ColdOhms(Circuit.Bike.Lamps[part.Lamp].Specification, 1) is not null;

    public SettingPredictions In(Setting setting) =>
        _settings.GetOrAdd(setting, s => new Lazy<SettingPredictions>(() => new SettingPredictions(this, s))).Value;

    /// <summary>Does work for every severity, on all cores, each thread with a separate solver.</summary>
    public void ForEachMember(Action<FaultSolver, int> work, CancellationToken cancellationToken) =>
        ForEach(Members.Length, work, cancellationToken);

    /// <summary>The same for the numbers below a count.</summary>
    public void ForEach(int count, Action<FaultSolver, int> work, CancellationToken cancellationToken) =>
        Parallel.For(
            0,
            count,
            new ParallelOptions { CancellationToken = cancellationToken },
            () => new FaultSolver(Circuit, Draws),
            (i, _, solver) =>
            {
                work(solver, i);
                return solver;
            },
            _ => { }
        );

    public Column Of(in TestPlace test, CancellationToken cancellationToken) =>
        In(test.Setting).Of(test.Instrument, test.Index, cancellationToken);

    public string NameOf(in TestPlace test) =>
        test.Instrument switch
        {
            Instrument.Ammeter => Circuit.Bike.Fuses[test.Index].Name,
            Instrument.Visual => Circuit.Bike.Lamps[test.Index].Lamp,
            Instrument.Ohmmeter => Parts[test.Index].Name,
            _ => Circuit.Points[test.Index],
        };
}
