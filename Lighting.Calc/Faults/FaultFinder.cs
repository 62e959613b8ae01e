using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Fault finder: ranks the faults of a bike by readings and chooses the next test.</summary>
/// <remarks>
/// Making one solves the bike under every single fault of every part, in the fewest settings that cover everything;
/// that takes about a second for a twenty-wire harness. Diagnosing then takes a fraction of it. Safe to share between
/// threads.
/// </remarks>
public sealed class FaultFinder
{
    // Less likely faults are omitted.
    private const double Mentioned = 1e-3;

    private readonly FaultModel _model;
    private readonly ImmutableArray<Particle> _grid;
    private readonly List<(TestPlace Test, Column Column)> _tests;
    private readonly ImmutableArray<int> _groupOf;

    /// <summary>Solves a bike under every fault.</summary>
    /// <param name="bike">The bike; it needs runs.</param>
    /// <param name="options">Instruments, tolerances, priors; null takes the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no runs, a lamp or fuse without points, too many settings, a
    /// lighting coil that cannot be fitted to the charging list, or the options lack a prior or a test
    /// cost.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public FaultFinder(Bike bike, FaultFindingOptions? options = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(bike);
        RequireRuns(bike);
        _model = new FaultModel(new FaultCircuit(bike, options ?? new FaultFindingOptions()), cancellationToken);
        foreach (Setting setting in _model.Cover)
            _model.In(setting).TakeAllTestLamps(cancellationToken);
        _tests = [.. _model.Tests().Select(t => (t, _model.Of(t, cancellationToken)))];
        _grid = Posterior.Grid(_model);
        _groupOf = FaultGroups.Of(_model, _tests);
    }

    /// <summary>The bike.</summary>
    public Bike Bike => _model.Circuit.Bike;

    /// <summary>The fewest settings that exercise every contact and lamp.</summary>
    public ImmutableArray<Setting> Settings => _model.Cover;

    /// <summary>Engine speed at which a bike with direct lighting is to be read; null for a battery, engine
    /// off.</summary>
    public UnitsNet.RotationalSpeed? EngineSpeed => _model.Circuit.Supply.Speed;

    /// <summary>Instructions for taking readings.</summary>
    public ImmutableArray<Finding> Notes => ReadingNotes.Of(_model.Circuit);

    internal FaultModel Model => _model;

    internal ImmutableArray<int> GroupOf => _groupOf;

    /// <summary>Diagnosis by readings. Their order does not matter; a row without a reading is ignored.</summary>
    /// <param name="readings">The readings; none gives the priors and the best first test.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Ranked faults, next test, and errors in the readings.</returns>
    /// <exception cref="ArgumentNullException">The readings are null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Diagnosis Diagnose(IEnumerable<Reading> readings, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return Diagnose(readings, seekNext: true, cancellationToken);
    }

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
                .Select(r => new Evidence(r.Reading, r.Place, r.Value, _model.Of(r.Place, cancellationToken))),
        ];
        Posterior posterior = Posterior.Of(_model, _grid, evidence);
        var explainer = new Explainer(_model, posterior, evidence);
        List<FaultGroup> groups = Groups(posterior, explainer);
        var findings = check.Findings.ToBuilder();
        Hypotheses hypotheses = Hypotheses.Singles(_model, posterior, explainer);
        List<(TestPlace Test, Column Column)> tests = _tests;
        if (groups[0].Conflicting.Length > 0)
        {
            ImmutableArray<FaultPair> pairs = new PairSearch(_model, _grid, posterior, evidence).Find(
                cancellationToken
            );
            if (!pairs.IsEmpty)
            {
                double most = Math.Max(posterior.LogEvidence, pairs.Max(p => p.LogWeight));
                double[] weights =
                [
                    Math.Exp(posterior.LogEvidence - most),
                    .. pairs.Select(p => Math.Exp(p.LogWeight - most)),
                ];
                double[] shares = [.. weights.Select(w => w / weights.Sum())];
                var words = new PairExplainer(explainer);
                groups =
                [
                    .. groups
                        .Select(g => g.Times(shares[0]))
                        .Concat(pairs.Select((p, i) => words.Group(p, shares[i + 1])))
                        .Where(g => g.Probability >= Mentioned)
                        .OrderByDescending(g => g.Probability),
                ];
                if (seekNext)
                {
                    hypotheses = hypotheses.With(pairs, shares[0], shares[1..], words);
                    tests = PairColumns.Of(_model, _tests, pairs, cancellationToken);
                }
            }

            if (groups[0].Conflicting.Length > 0)
                findings.Add(
                    new Finding(
                        FindingKind.ReadingNotExplained,
                        Severity.Caution,
                        groups[0].Conflicting[0].Reading.Point
                    )
                    {
                        Detail = groups[0].Conflicting[0].Message,
                    }
                );
        }

        bool nothing = evidence.Length > 0 && groups[0].IsNothing && groups[0].Conflicting.IsEmpty;
        NextTest? next = !seekNext
            ? null
            : new NextTestSearch(_model, tests).Find(hypotheses, evidence, cancellationToken);
        return new Diagnosis(
            [.. groups],
            nothing,
            Summary(groups, nothing, evidence.Length, explainer.IsNormal),
            next,
            findings.ToImmutable(),
            [.. evidence.Select(e => e.Reading)]
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

    private static string Summary(List<FaultGroup> groups, bool nothing, int readings, bool asItShouldBe)
    {
        FaultGroup first = groups[0];
        if (nothing)
            return $"No fault found{(first.Probability < 0.5 ? " so far" : "")}: "
                + $"{(readings == 1 ? "the reading is" : "all readings are")} normal (probability of no fault: "
                + $"{FaultWords.Percent(first.Probability)}).";
        if (readings == 0)
            return "No readings yet: start with the first test.";
        string others =
            first.Alternatives.Length > 1
                ? $", or {first.Alternatives.Length - 1} more that no reading can distinguish from it"
                : "";
        string share = $"({FaultWords.Percent(first.Probability)}{others})";
        return asItShouldBe
                ? $"{(readings == 1 ? "The reading is" : "All readings are")} normal so far; the likeliest remaining "
                    + $"fault is {first.Best.Sentence} {share}."
            : first.Probability < 0.5 ? $"No clear result yet; the likeliest fault is {first.Best.Sentence} {share}."
            : $"{char.ToUpperInvariant(first.Best.Sentence[0])}{first.Best.Sentence[1..]} {share}.";
    }

    private List<FaultGroup> Groups(Posterior posterior, Explainer explainer)
    {
        var groups = new List<FaultGroup>();
        foreach (IGrouping<int, int> group in Enumerable.Range(0, _model.Families.Length).GroupBy(f => _groupOf[f]))
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

        return [.. groups.OrderByDescending(g => g.Probability)];
    }
}
