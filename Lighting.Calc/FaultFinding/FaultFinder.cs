using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>Ranks the faults of a bike by what was read on it, and says what to test next.</summary>
/// <remarks>
/// Making one solves the bike under every single fault of every part, in the fewest settings that show everything; that takes
/// about a second for a twenty-wire harness. Diagnosing then takes a fraction of it. Safe to share between threads.
/// </remarks>
public sealed class FaultFinder
{
    private readonly FaultModel _model;
    private readonly ImmutableArray<Particle> _grid;
    private readonly List<(TestPlace Test, Column Column)> _tests;
    private readonly ImmutableArray<int> _groupOf;

    /// <summary>Solves a bike under every fault.</summary>
    /// <param name="bike">The bike; it needs runs, for without wires there is nothing to find a fault in.</param>
    /// <param name="options">Instruments, tolerances, priors; null takes the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no runs, a lamp or fuse without points, too many settings, a lighting coil that cannot be fitted to the charging list, or the options lack a prior or an effort.</exception>
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
        if (groups[0].Against.Length > 0)
        {
            groups = WithPairs(groups, posterior, explainer, evidence, cancellation);
            if (groups[0].Against.Length > 0)
                findings.Add(new Finding(Severity.Caution, groups[0].Against[0].Reading.Point, $"no single fault and no pair of faults explains all readings; repeat this one: {groups[0].Against[0].Message}."));
        }

        bool nothing = evidence.Length > 0 && groups[0].IsNothing && groups[0].Against.IsEmpty;
        NextTest? next = !seekNext ? null : new NextTestSearch(_model, _tests).Find(posterior, evidence, explainer, cancellation);
        return new Diagnosis
        {
            Ranked = [.. groups],
            NothingFound = nothing,
            Summary = Summary(groups, nothing, evidence.Length, explainer.IsAsItShouldBe),
            Next = next,
            Findings = findings.ToImmutable(),
            Used = [.. evidence.Select(e => e.Reading)],
        };
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
            return $"Nothing found{(first.Probability < 0.5 ? " so far" : "")}: the {(readings == 1 ? "reading is" : "readings are")} as {(readings == 1 ? "it" : "they")} should be ({FaultWords.Percent(first.Probability)} that no more is to be found).";
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
            if (probability < 1e-3)
                continue;
            int[] families = [.. group.OrderByDescending(f => posterior.FamilyWeights[f])];
            groups.Add(new FaultGroup
            {
                Probability = probability,
                Alternatives = [.. families.Select(f => explainer.Explain(f, posterior.FamilyWeights[f]))],
                Against = explainer.Against(explainer.Fits(posterior.Best(families[0]))),
            });
        }

        return [.. groups.OrderByDescending(g => g.Probability)];
    }

    private List<FaultGroup> WithPairs(List<FaultGroup> singles, Posterior posterior, Explainer explainer, Evidence[] evidence, CancellationToken cancellation)
    {
        ImmutableArray<FaultPair> pairs = new PairSearch(_model, _grid, posterior, evidence).Find(cancellation);
        if (pairs.IsEmpty)
            return singles;
        double most = Math.Max(posterior.LogEvidence, pairs.Max(p => p.LogWeight));
        double single = Math.Exp(posterior.LogEvidence - most), sum = single + pairs.Sum(p => Math.Exp(p.LogWeight - most));
        var ranked = singles.Select(g => Scaled(g, single / sum)).ToList();
        foreach (FaultPair pair in pairs)
        {
            double probability = Math.Exp(pair.LogWeight - most) / sum;
            ImmutableArray<ReadingFit> fits = explainer.Fits(e => pair.Predicted[e]);
            Fault[] faults = [.. pair.Members.Select(FaultAt)];
            string head = string.Join(", together with ", pair.Members.Select((m, i) => explainer.Head(faults[i], IndexOf(m))));
            ranked.Add(new FaultGroup
            {
                Probability = probability,
                Alternatives = [new FaultExplanation([.. faults], probability, head + explainer.Explained(fits))],
                Against = explainer.Against(fits),
            });
        }

        return [.. ranked.Where(g => g.Probability >= 1e-3).OrderByDescending(g => g.Probability)];
    }

    private static FaultGroup Scaled(FaultGroup group, double factor) => group with
    {
        Probability = group.Probability * factor,
        Alternatives = [.. group.Alternatives.Select(a => a with { Probability = a.Probability * factor })],
    };

    private int IndexOf(FaultMember member) => _model.Families.IndexOf(member.Family);

    private Fault FaultAt(FaultMember member)
    {
        (string part, string words) = FaultWords.Subject(member.Family, _model.Circuit);
        var fault = new Fault { Kind = member.Family.Kind, Part = part, Words = words };
        return member.Family.Kind switch
        {
            FaultKind.BatteryFlat or FaultKind.CoilWeak => fault with { OpenVoltage = UnitsNet.ElectricPotential.FromVolts(_model.Circuit.Supply.OpenVolts * member.Case.Factor) },
            FaultKind.WrongLamp => fault with { Lamp = member.Case.Lamp },
            FaultKind.LampDead => fault with { DeadLamps = (int)member.Case.Factor },
            FaultKind.None or FaultKind.LedReversed or FaultKind.ContactNeverOpens or FaultKind.FuseBlown or FaultKind.ShortToFrame => fault,
            _ when double.IsInfinity(member.Case.Ohms) => fault with { IsOpen = true },
            _ => fault with { Resistance = new FittedResistance(UnitsNet.ElectricResistance.FromOhms(member.Case.Ohms), UnitsNet.ElectricResistance.FromOhms(member.Case.Ohms / 1.3), UnitsNet.ElectricResistance.FromOhms(member.Case.Ohms * 1.3)) },
        };
    }
}
