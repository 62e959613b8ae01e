using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Fault finder: ranks the faults of a bike by readings and chooses the next test.</summary>
/// <remarks>
/// Making one solves the bike under every single fault of every part, in the fewest settings that cover everything.
/// What a diagnosis needs besides is solved then, and kept for the next. Both take tenths of a second for a twenty-wire
/// harness. Safe to share between threads.
/// </remarks>
public sealed class FaultFinder
{
    // Less likely faults are omitted.
    private const double Mentioned = 1e-3;

    // From this probability on a fault is named with its repair.
    private const double Named = 0.8;

    // Something that is not listed may be two that are.
    private const double SeeksPairs = 0.3;

    // From this probability on, and of so many readings, one that the likeliest fault leaves unexplained is measured
    // once more; an eye is doubted only where the fault would be named.
    private const double Believed = 0.4;
    private const int LeastRepeated = 3;

    // The place of what the catalogue lacks, after "nothing".
    private const int NotListedFamily = 1;

    private readonly FaultModel _model;
    private readonly ImmutableArray<Particle> _grid;
    private readonly ImmutableArray<TestPlace> _tests;

    /// <summary>Solves a bike under every fault.</summary>
    /// <param name="bike">The bike; it needs runs.</param>
    /// <param name="options">Instruments, tolerances, priors; null takes the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no runs, a lamp or fuse without points, too many settings, a
    /// lighting coil that cannot be fitted to the charging list, an engine speed outside that list, or the options lack
    /// a prior or a test cost.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public FaultFinder(Bike bike, FaultFindingOptions? options = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(bike);
        RequireRuns(bike);
        _model = new FaultModel(new FaultCircuit(bike, options ?? new FaultFindingOptions()), cancellationToken);
        _tests = TestCatalog.Of(_model);
        _grid = Posterior.Grid(_model);
    }

    /// <summary>The bike.</summary>
    public Bike Bike => _model.Circuit.Bike;

    /// <summary>The fewest settings that exercise every contact and lamp.</summary>
    public ImmutableArray<Setting> Settings => _model.Cover;

    /// <summary>Engine speed at which the bike is to be read; null with the engine off.</summary>
    public UnitsNet.RotationalSpeed? EngineSpeed => _model.Circuit.Supply.Speed;

    /// <summary>Instructions for taking readings.</summary>
    public ImmutableArray<Finding> Notes => ReadingNotes.Of(_model.Circuit);

    internal FaultModel Model => _model;

    internal ImmutableArray<TestPlace> Tests => _tests;

    /// <summary>Diagnosis by readings. Their order does not matter; a row without a reading is ignored.</summary>
    /// <param name="readings">The readings; none gives the priors and the best first test.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Ranked faults, next test, and errors in the readings.</returns>
    /// <exception cref="ArgumentNullException">The readings are null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Diagnosis Diagnose(IEnumerable<Reading> readings, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Reading[] taken = [.. readings];
        Diagnosis diagnosis = Diagnose(taken, seekNext: true, cancellationToken);
        return FromFrame(taken, diagnosis, cancellationToken) is { } finding ? diagnosis.WithFrame(finding) : diagnosis;
    }

    // On positive earth many read from the frame and leave out the sign: told where that explains what else nothing
    // does.
    private Finding? FromFrame(Reading[] readings, Diagnosis diagnosis, CancellationToken cancellationToken)
    {
        string frame = _model.Circuit.Sides.Frame;
        if (Bike.Earth != Earth.Positive || !IsUnexplained(diagnosis))
            return null;
        Reading[] turned =
        [
            .. readings.Select(r =>
                r is { Instrument: Instrument.Meter, To: null, Voltage: { Volts: >= 0 } volts }
                && !Name.Equal(r.Point, frame)
                    ? r with { To = frame, Voltage = -volts }
                    : r
            ),
        ];
        return turned.SequenceEqual(readings) || Diagnose(turned, seekNext: false, cancellationToken) is not { } other
            || IsUnexplained(other)
            ? null
            : new Finding(FindingKind.ReadingsFromFrame, Severity.Caution, frame)
            {
                Detail = other.Summary.Split('\n')[0],
            };
    }

    private static bool IsUnexplained(Diagnosis diagnosis) =>
        diagnosis.Ranked is [var first, ..] && (first.IsNotListed || !first.Conflicting.IsEmpty);

    /// <summary>The same, optionally without the next test.</summary>
    internal Diagnosis Diagnose(
        IEnumerable<Reading> readings,
        bool seekNext,
        CancellationToken cancellationToken = default
    )
    {
        var check = new ReadingCheck(_model);
        Evidence[] evidence =
        [
            .. check
                .Take(readings)
                .Select(r => EvidenceOf(r.Reading, r.Place, r.Value, r.Times, cancellationToken)),
        ];
        Posterior posterior = Posterior.Of(_model, _grid, evidence);
        var explainer = new Explainer(_model, posterior, evidence);
        PairSearch? search = NeedsPairs(posterior, explainer, evidence)
            ? new PairSearch(_model, _grid, posterior, evidence)
            : null;
        ImmutableArray<FaultPair> pairs = search?.Find(cancellationToken) ?? [];
        PairShares shares = PairShares.Of(posterior, pairs);
        if (search is not null)
            pairs = search.WithSpread(pairs, i => shares.Pairs[i] >= Mentioned, cancellationToken);
        var words = new PairExplainer(explainer);
        ShortList list = ShortList.Making(_model, posterior, pairs, shares);
        // Where a short may be, no ammeter goes into the fuse's place, and no jumper past it.
        TestPlace[] tests =
        [
            .. _tests.Where(t =>
                !t.IsEveryLamp
                && (!t.IsToFrameUnplugged || list.ToFrame > NextTestSearch.LeastToFrame)
                && (list.Shorts <= NextTestSearch.LeastShort || !NextTestSearch.FeedsShort(t))
            ),
        ];
        Column[] columns = list.Columns(tests, cancellationToken);
        int[] alike = FaultGroups.Of(_model, list, tests, columns);
        FaultGroup[] groups =
        [
            .. Groups(posterior, explainer, alike)
                .Select(g => g.Times(shares.Single, g.IsNotListed ? shares.Resembling.Sum() : 0))
                .Concat(pairs.Select((p, i) => words.Group(p, shares.Pairs[i])))
                .Where(g => g.Probability >= Mentioned)
                .OrderBy(g => g.IsNotListed && g.Probability < FaultGroup.NotListedLeads)
                .ThenByDescending(g => g.Probability),
        ];
        var findings = check.Findings.ToBuilder();
        if (groups[0].Conflicting.FirstOrDefault(c => Times(evidence, c.Reading) == 1) is { } once)
            findings.Add(
                new Finding(FindingKind.ReadingNotExplained, Severity.Caution, once.Reading.Point)
                {
                    Detail = once.Message,
                }
            );
        ImmutableArray<int> first = [.. list.Families.Select(f => alike[f]).Distinct()];
        var hypotheses = new Hypotheses(
            list,
            [
                .. list.Families.Select(f => first.IndexOf(alike[f])),
                .. Enumerable.Range(first.Length, list.Pairs.Length),
            ],
            posterior.BatteryMean,
            posterior.BatteryVariance,
            (h, probability) =>
                h < list.Families.Length
                    ? explainer.Named(list.Families[h], probability)
                    : words.Named(list.Pairs[h - list.Families.Length], probability)
        );
        bool nothing = evidence.Length > 0 && groups[0].IsNothing && groups[0].Conflicting.IsEmpty;
        NextTest? next = !seekNext
            ? null
            : new NextTestSearch(_model, tests, columns, [.. _tests.Where(t => t.IsEveryLamp)]).Find(
                hypotheses,
                [.. evidence.Select(e => e.Place), .. check.Skipped],
                [.. evidence.Select(e => e.Place.Setting).Distinct()],
                cancellationToken
            );
        if (seekNext && Repeated(groups[0], posterior, shares, evidence, next) is { } repeated)
            next = repeated;
        (FaultGroup Group, double Probability)? certain = evidence.Length > 0 ? Certain(groups) : null;
        FaultFamily? named = certain is { Probability: >= Named } sure
            ? _model.Families.First(f => f.Is(sure.Group.Best.Faults[0]))
            : null;
        (string, double)? led = Headline.Consequence(_model, posterior, shares.Single);
        return new Diagnosis(
            [.. groups],
            nothing,
            evidence.Length == 0 && findings.Any(f => f.Kind == FindingKind.ContradictoryReadings)
                ? "The readings contradict each other: repeat those that the findings name."
                : Headline.Of(
                    _model,
                    groups,
                    evidence.Length,
                    nothing,
                    explainer,
                    led,
                    named is null ? null : certain
                ),
            next,
            findings.ToImmutable(),
            [.. evidence.Select(e => e.Reading)]
        )
        {
            Consequence = led,
            Certain = certain,
            Repair = named?.Repair,
            Proof = named is null
                ? null
                : explainer.Proof(explainer.Fits(posterior.Best(_model.Families.IndexOf(named)))),
        };
    }

    // A fault is as certain as all together that have it: by itself, or with a second one.
    private static (FaultGroup Group, double Probability)? Certain(FaultGroup[] groups)
    {
        (FaultGroup Group, double Probability)? most = null;
        foreach (FaultGroup group in groups)
            if (
                group.Best.Faults is [{ Kind: not FaultKind.None and not FaultKind.NotListed } one]
                && groups
                    .Where(g => g == group || g.Best.Faults.Any(f => f.Kind == one.Kind && f.Part == one.Part))
                    .Sum(g => g.Probability)
                    is var sum
                && sum > (most?.Probability ?? 0)
            )
                most = (group, sum);
        return most;
    }

    private Evidence EvidenceOf(
        Reading reading,
        TestPlace place,
        double value,
        int times,
        CancellationToken cancellationToken
    )
    {
        Column predicted = _model.Of(place, cancellationToken);
        return new Evidence(reading, place, value, predicted, times)
        {
            IsDrain = _model.Circuit.IsInBatteryLead(place),
            Changed = new ReadingScale(_model.Circuit).ChangedDensity(place, value, predicted.At(0)),
        };
    }

    // A reading that the likeliest fault leaves unexplained is taken once more before that fault is believed.
    private NextTest? Repeated(
        FaultGroup first,
        Posterior posterior,
        PairShares shares,
        Evidence[] evidence,
        NextTest? next
    )
    {
        if (
            first.IsNotListed
            || evidence.Length < LeastRepeated
            || first.Conflicting.FirstOrDefault(c => Times(evidence, c.Reading) == 1) is not { } unexplained
        )
            return null;
        int index = Array.FindIndex(evidence, e => ReferenceEquals(e.Reading, unexplained.Reading));
        if (next is not null && first.Probability < (evidence[index].IsLook ? Named : Believed))
            return null;
        double notListed = posterior.FamilyWeights[NotListedFamily] * shares.Single + shares.Resembling.Sum();
        return new RepeatedReading(_model, _grid, evidence).Test(
            index,
            blunder: Math.Clamp(1 - notListed, 0.05, 0.95),
            new TestCosts(_model.Circuit, [evidence[index].Place.Setting]).Of(evidence[index].Place)
        );
    }

    private static int Times(Evidence[] evidence, Reading reading) =>
        evidence.First(e => ReferenceEquals(e.Reading, reading)).Times;

    // Where the leading fault leaves a reading unexplained, or something that is not listed explains them as well.
    private bool NeedsPairs(Posterior posterior, Explainer explainer, Evidence[] evidence)
    {
        int best = Enumerable.Range(0, _model.Families.Length).MaxBy(f => posterior.FamilyWeights[f]);
        return evidence.Length > 1
            && (
                _model.Families[best].IsBroad
                || posterior.FamilyWeights[NotListedFamily] > SeeksPairs
                || !explainer.Conflicting(explainer.Fits(posterior.Best(best))).IsEmpty
            );
    }

    internal static void RequireRuns(Bike bike)
    {
        if (!bike.HasNetwork)
            throw new ArgumentException(
                "Fault finding needs the runs of the bike: add a runs.csv, and the points of lamps, switches and "
                    + "fuses.",
                nameof(bike)
            );
    }

    private List<FaultGroup> Groups(Posterior posterior, Explainer explainer, int[] groupOf)
    {
        var groups = new List<FaultGroup>();
        foreach (IGrouping<int, int> group in Enumerable.Range(0, _model.Families.Length).GroupBy(f => groupOf[f]))
        {
            double probability = group.Sum(f => posterior.FamilyWeights[f]);
            if (probability < Mentioned)
                continue;
            int[] families = [.. group.OrderByDescending(f => posterior.FamilyWeights[f])];
            groups.Add(
                new FaultGroup(
                    probability,
                    [.. families.Select(f => explainer.Explain(f, posterior.FamilyWeights[f]))],
                    explainer.Conflicting(explainer.Fits(posterior.Best(families[0])))
                )
            );
        }

        return groups;
    }
}
