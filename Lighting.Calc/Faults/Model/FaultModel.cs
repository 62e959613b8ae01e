using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every fault of every severity and what each test reads under it. Settings are solved when first asked for,
/// then kept.</summary>
internal sealed class FaultModel
{
    private readonly ConcurrentDictionary<(Setting, double?), Lazy<SettingPredictions>> _settings = new();
    private readonly ConcurrentDictionary<Setting, CarriedLamps> _carried = new();
    private readonly ConcurrentDictionary<(int Point, Setting Setting), bool> _joinsFixed = new();
    private readonly ConcurrentBag<FaultSolver> _solvers = [];
    private readonly Lock _solving = new();
    private readonly double _weights;

    public FaultModel(FaultCircuit circuit, CancellationToken cancellationToken)
        : this(circuit, FaultCatalog.Of(circuit), cancellationToken)
    {
        Noticed = NoticedFaults.Of(this, cancellationToken);
        for (int m = 0; m < Members.Length; m++)
            _weights += WeightOf(m);
    }

    private FaultModel(FaultCircuit circuit, ImmutableArray<FaultFamily> families, CancellationToken cancellationToken)
    {
        Circuit = circuit;
        Draws = new ToleranceDraws(circuit);
        MayRun = circuit.Supply.Running is null ? _ => true : EngineRunning.Of(circuit.Bike);
        Cover = SettingCover.Of(circuit.Bike, circuit.Graph, circuit.Options.Within, MayRun, cancellationToken);
        Families = families;
        Members = [.. Families.SelectMany(f => f.Cases.Select(c => new FaultMember(f, c)))];
        EveryMember = [.. Enumerable.Range(0, Members.Length)];
        FamilyOf = [.. Families.SelectMany((f, i) => f.Cases.Select(_ => i))];
        var first = new int[Families.Length];
        for (int f = 1; f < first.Length; f++)
            first[f] = first[f - 1] + Families[f - 1].Cases.Length;
        FirstOf = [.. first];
        Noticed = [.. Members.Select(_ => 1.0)];
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

    /// <summary>The indexes of all severities.</summary>
    public int[] EveryMember { get; }

    /// <summary>For each severity how likely somebody notices it, 0 to 1.</summary>
    public ImmutableArray<double> Noticed { get; }

    public ImmutableArray<MeasuredPart> Parts => Circuit.MeasuredParts;

    /// <summary>The fewest settings that cover everything.</summary>
    public ImmutableArray<Setting> Cover { get; }

    public Setting AllOff { get; }

    /// <summary>Whether the engine can be as the supply has it in a setting.</summary>
    public Func<Setting, bool> MayRun { get; }

    /// <summary>The same with no fault but "nothing".</summary>
    public static FaultModel Healthy(FaultCircuit circuit, CancellationToken cancellationToken) =>
        new(circuit, [new NoFault(circuit)], cancellationToken);

    /// <summary>Prior probability of a severity.</summary>
    public double PriorOf(int member) => WeightOf(member) / _weights;

    private double WeightOf(int member) => Members[member].Family.Weight * Members[member].Case.Share * Noticed[member];

    /// <summary>Whether a lamp is one to look at, not an ignition or a horn.</summary>
    public bool GivesLight(int lamp) => Circuit.GivesLight(lamp);

    /// <summary>Of the settings that cover everything the one with fewest switches on that lights a lamp; null where
    /// none does.</summary>
    public Setting? Lighting(int lamp) =>
        Cover
            .Where(s => CarriedIn(s).IsFed(lamp))
            .MinBy(s => s.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off)));

    /// <summary>The lamps that are fed in a setting, and the parts that carry their currents.</summary>
    public CarriedLamps CarriedIn(Setting setting) =>
        _carried.GetOrAdd(setting, s => new CarriedLamps(Circuit.Graph, s));

    /// <summary>Whether the lists say what an ohmmeter shows on a part.</summary>
    public bool IsKnownToOhmmeter(MeasuredPart part) =>
        part.Lamp < 0 || ColdNetwork.ColdOhms(Circuit.Bike.Lamps[part.Lamp].Specification, 1) is not null;

    public SettingPredictions In(Setting setting, double? engineRpm = null) =>
        _settings
            .GetOrAdd(
                (setting, engineRpm),
                s => new Lazy<SettingPredictions>(() => new SettingPredictions(this, s.Item1, s.Item2))
            )
            .Value;

    /// <summary>Does work for the numbers below a count, on all cores, each thread with a separate solver.</summary>
    public void ForEach(int count, Action<FaultSolver, int> work, CancellationToken cancellationToken)
    {
        if (count == 0)
            return;
        Parallel.For(
            0,
            count,
            new ParallelOptions { CancellationToken = cancellationToken },
            () => _solvers.TryTake(out FaultSolver? free) ? free : new FaultSolver(Circuit, Draws),
            (i, _, solver) =>
            {
                solver.StartCold();
                work(solver, i);
                return solver;
            },
            _solvers.Add
        );
    }

    /// <summary>The predictions of a test under all faults.</summary>
    public Column Of(in TestPlace test, CancellationToken cancellationToken) =>
        Of([test], EveryMember, cancellationToken)[0];

    /// <summary>The prediction of a test on the healthy bike.</summary>
    public Prediction Healthy(in TestPlace test, CancellationToken cancellationToken) =>
        Of([test], [0], cancellationToken)[0].At(0);

    /// <summary>The predictions of tests, valid for some severities. What is not known yet is solved, all settings at
    /// once.</summary>
    public Column[] Of(IReadOnlyList<TestPlace> tests, int[] members, CancellationToken cancellationToken)
    {
        lock (_solving)
        {
            SettingWork[] work =
            [
                .. tests
                    .GroupBy(t => t.State)
                    .Select(g => In(g.Key.Setting, g.Key.EngineRpm).Missing(g, members)),
            ];
            Solve(w => w.First);
            Solve(w => w.Members);
            return [.. tests.Select(t => In(t.Setting, t.EngineRpm).Known(t))];

            void Solve(Func<SettingWork, int[]> members)
            {
                (SettingWork Work, int Member)[] each = [.. work.SelectMany(w => members(w).Select(m => (w, m)))];
                ForEach(each.Length, (solver, i) => each[i].Work.Solve(solver, each[i].Member), cancellationToken);
            }
        }
    }

    /// <summary>Standard deviation of the logarithm of a resistance: loads that the lists do not describe to an
    /// ohmmeter make a high one unknown.</summary>
    public double OhmSigma(in TestPlace test, Setting setting, double logarithm)
    {
        if (test.To < 0)
            return OhmScale.Sigma(logarithm, isLamp: Parts[test.Index].Lamp >= 0);
        if (logarithm > 0 && _joinsFixed.GetOrAdd((test.Index, setting), JoinsFixed))
            return OhmScale.AnySigma;
        bool isUnknown = Circuit.Bike.Lamps.Any(l => ColdNetwork.ColdOhms(l.Specification, 1) is null);
        return isUnknown && logarithm > OhmScale.HighLogarithm
            ? OhmScale.UnknownSigma
            : OhmScale.Sigma(logarithm, isLamp: true);
    }

    // An ignition coil with its points closed, or a horn, is a few ohms.
    private bool JoinsFixed((int Point, Setting Setting) place)
    {
        HarnessGraph graph = Circuit.Graph;
        Reached joined = graph.From(place.Point, graph.Switches.ClosedIn(place.Setting));
        return graph.Lamps.Any(l =>
            Circuit.Bike.Lamps[l.Index].Specification.Type == LampType.Fixed && joined.Reaches(l.A)
        );
    }

    public string NameOf(in TestPlace test) =>
        test.Instrument switch
        {
            Instrument.Meter or Instrument.Ohmmeter when test.IsOnGenerator => BenchPoints.NameOf(test.Index),
            Instrument.Ammeter when Circuit.IsInBatteryLead(test) => BenchPoints.BatteryLead,
            Instrument.Ammeter => Circuit.Bike.Fuses[test.Index].Name,
            _ when test.IsEveryLamp => Reading.EveryLamp,
            Instrument.Visual or Instrument.GoodLamp or Instrument.Bench or Instrument.BenchReversed => Circuit
                .Bike
                .Lamps[test.Index]
                .Lamp,
            Instrument.Wiggle => Parts[test.Index].Name,
            Instrument.Ohmmeter when test.To < 0 => Parts[test.Index].Name,
            Instrument.TestLamp when Circuit.FuseOf(test) is >= 0 and var fuse => Circuit.Bike.Fuses[fuse].Name,
            _ => Circuit.Points[test.Index],
        };
}
