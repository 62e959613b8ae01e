using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Ranks the faults of a bike by what was read on it, and says what to test next.</summary>
/// <remarks>
/// Making one solves the bike under every single fault of every part, in the fewest settings that show everything; that takes
/// about a second for a twenty-wire harness. Diagnosing then takes a fraction of it. Safe to share between threads.
/// </remarks>
public sealed class FaultFinder
{
    // What is less likely is left out of the answer.
    private const double Mentioned = 1e-3;

    private readonly FaultModel _model;
    private readonly ImmutableArray<Particle> _grid;
    private readonly List<(TestPlace Test, Column Column)> _tests;
    private readonly ImmutableArray<int> _groupOf;

    /// <summary>Solves a bike under every fault.</summary>
    /// <param name="bike">The bike; it needs runs, for without wires there is nothing to find a fault in.</param>
    /// <param name="options">Instruments, tolerances, priors; null takes the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no runs, a lamp or fuse without points, too many settings, a lighting coil that cannot be fitted to the charging list, or the options lack a prior or a test cost.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public FaultFinder(Bike bike, FaultFindingOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(bike);
        RequireRuns(bike);
        _model = new FaultModel(new FaultCircuit(bike, options ?? new FaultFindingOptions()), cancellation);
        foreach (Setting setting in _model.Cover)
            _model.In(setting).TakeAllTestLamps(cancellation);
        _tests = [.. _model.Tests().Select(t => (t, _model.Of(t, cancellation)))];
        _grid = Posterior.Grid(_model);
        _groupOf = FaultGroups.Of(_model, _tests);
    }

    /// <summary>The bike.</summary>
    public Bike Bike => _model.Circuit.Bike;

    /// <summary>The fewest settings that exercise every contact and lamp.</summary>
    public ImmutableArray<Setting> Settings => _model.Cover;

    /// <summary>Engine speed at which a bike with direct lighting is to be read; null for a battery, engine off.</summary>
    public UnitsNet.RotationalSpeed? EngineSpeed => _model.Circuit.Supply.Speed;

    /// <summary>How readings are to be taken so that they mean what is computed here.</summary>
    public ImmutableArray<Finding> Notes => ReadingNotes.Of(_model.Circuit);

    internal FaultModel Model => _model;

    internal ImmutableArray<int> GroupOf => _groupOf;

    /// <summary>What readings say. Their order does not matter; a row without a reading counts as not taken.</summary>
    /// <param name="readings">The readings; none gives the priors and the best first test.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The faults ranked, the next test, and what is wrong with the readings themselves.</returns>
    /// <exception cref="ArgumentNullException">The readings are null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Diagnosis Diagnose(IEnumerable<Reading> readings, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return Diagnose(readings, seekNext: true, cancellation);
    }

    /// <summary>The same, without a next test where none is asked for.</summary>
    internal Diagnosis Diagnose(IEnumerable<Reading> readings, bool seekNext, CancellationToken cancellation = default)
    {
        var check = new ReadingCheck(_model);
        Evidence[] evidence = [.. check.Take(readings).Select(r => new Evidence(r.Reading, r.Place, r.Value, _model.Of(r.Place, cancellation)))];
        Posterior posterior = Posterior.Of(_model, _grid, evidence);
        var explainer = new Explainer(_model, posterior, evidence);
        List<FaultGroup> groups = Groups(posterior, explainer);
        var findings = check.Findings.ToBuilder();
        Hypotheses hypotheses = Hypotheses.Singles(_model, posterior, explainer);
        List<(TestPlace Test, Column Column)> tests = _tests;
        if (groups[0].Conflicting.Length > 0)
        {
            ImmutableArray<FaultPair> pairs = new PairSearch(_model, _grid, posterior, evidence).Find(cancellation);
            if (!pairs.IsEmpty)
            {
                double most = Math.Max(posterior.LogEvidence, pairs.Max(p => p.LogWeight));
                double[] weights = [Math.Exp(posterior.LogEvidence - most), .. pairs.Select(p => Math.Exp(p.LogWeight - most))];
                double[] shares = [.. weights.Select(w => w / weights.Sum())];
                var words = new PairExplainer(explainer);
                groups = [.. groups.Select(g => g.Times(shares[0])).Concat(pairs.Select((p, i) => words.Group(p, shares[i + 1]))).Where(g => g.Probability >= Mentioned).OrderByDescending(g => g.Probability)];
                if (seekNext)
                {
                    hypotheses = hypotheses.With(pairs, shares[0], shares[1..], words);
                    tests = PairColumns.Of(_model, _tests, pairs, cancellation);
                }
            }

            if (groups[0].Conflicting.Length > 0)
                findings.Add(new Finding(Severity.Caution, groups[0].Conflicting[0].Reading.Point, $"no single fault and no pair of faults explains all readings; repeat this one: {groups[0].Conflicting[0].Message}."));
        }

        bool nothing = evidence.Length > 0 && groups[0].IsNothing && groups[0].Conflicting.IsEmpty;
        NextTest? next = !seekNext ? null : new NextTestSearch(_model, tests).Find(hypotheses, evidence, cancellation);
        return new Diagnosis([.. groups], nothing, Summary(groups, nothing, evidence.Length, explainer.IsAsItShouldBe), next, findings.ToImmutable(), [.. evidence.Select(e => e.Reading)]);
    }

    internal static void RequireRuns(Bike bike)
    {
        if (!bike.HasNetwork)
            throw new ArgumentException("Fault finding needs the bike's wires: add a runs.csv (and the points of lamps, switches and fuses), then every wire, joint and ground can be tested.", nameof(bike));
    }

    private static string Summary(List<FaultGroup> groups, bool nothing, int readings, bool asItShouldBe)
    {
        FaultGroup first = groups[0];
        if (nothing)
            return $"Nothing found{(first.Probability < 0.5 ? " so far" : "")}: the {(readings == 1 ? "reading is" : "readings are")} as {(readings == 1 ? "it" : "they")} should be ({FaultWords.Percent(first.Probability)} that there is no fault).";
        if (readings == 0)
            return "Nothing has been read yet: begin with the first test.";
        string others = first.Alternatives.Length > 1 ? $", or {first.Alternatives.Length - 1} more that no reading can tell from it" : "";
        string share = $"({FaultWords.Percent(first.Probability)}{others})";
        return asItShouldBe ? $"So far {(readings == 1 ? "the reading is" : "all readings are")} as {(readings == 1 ? "it" : "they")} should be; of what they leave open the likeliest is {first.Best.Sentence} {share}."
            : first.Probability < 0.5 ? $"Not yet clear; the likeliest is {first.Best.Sentence} {share}."
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
            groups.Add(new FaultGroup(
                probability,
                [.. families.Select(f => explainer.Explain(f, posterior.FamilyWeights[f]))],
                explainer.Conflicting(explainer.Fits(posterior.Best(families[0])))));
        }

        return [.. groups.OrderByDescending(g => g.Probability)];
    }
}
