using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Puts the faults of a posterior into words: what they are, what they explain, what conflicts with
/// them.</summary>
internal sealed class Explainer(FaultModel model, Posterior posterior, IReadOnlyList<Evidence> evidence)
{
    /// <summary>Standard deviations beyond which a reading conflicts with a fault.</summary>
    public const double ConflictDistance = 3;

    private readonly ReadingScale _scale = new(model.Circuit);

    /// <summary>A family with the severity that fits best, and the readings it explains.</summary>
    public FaultExplanation Explain(int family, double probability)
    {
        if (evidence.Count == 0)
            return Named(family, probability);
        Fault fault = FaultOf(family);
        return new FaultExplanation(
            [fault],
            probability,
            model.Families[family].Sentence(fault)
                + (model.Families[family].IsBroad ? "" : Explained(Fits(posterior.Best(family)), family == 0))
        );
    }

    /// <summary>A family without its severity: before anything was read, or where a test decides it.</summary>
    public FaultExplanation Named(int family, double probability)
    {
        Fault fault = FaultOf(family);
        return new FaultExplanation([fault], probability, model.Families[family].Title(fault));
    }

    /// <summary>Whether readings were taken and all are those of a healthy bike.</summary>
    public bool IsNormal =>
        evidence.Count > 0
        && Fits([.. evidence.Select(e => e.Predicted.At(0))]).All(f => f.Distance <= ConflictDistance);

    /// <summary>Of what is not listed: what it shows most like, the reading that speaks against that, and where to look
    /// next.</summary>
    public string LeftToLookAt()
    {
        int like = Enumerable.Range(0, model.Families.Length).MaxBy(f => posterior.ResemblingFamilies[f]);
        ConflictingReading? odd = Conflicting(Fits(posterior.Best(like))).FirstOrDefault();
        string but = odd is null ? "" : $", but not with this: {odd.Message}";
        return like == 0
            ? $"Most readings are normal{but}. Left to look at: that point, what is joined to it, and what is fitted "
                + "that the lists do not have."
            : $"It shows most like {model.Families[like].Title(FaultOf(like))}{but}. Left to look at: that part, where "
                + "its wires end, what else is joined there, and a second fault.";
    }

    /// <summary>Fit of every reading to the best severity of a family.</summary>
    public ImmutableArray<ReadingFit> Fits(int particle)
    {
        Particle p = posterior.Particles[particle];
        return Fits([.. evidence.Select(e => p.Of(e.Predicted))]);
    }

    /// <summary>Fit of every reading to predictions.</summary>
    public ImmutableArray<ReadingFit> Fits(IReadOnlyList<Prediction> predicted)
    {
        var these = new Likelihood(_scale);
        var healthy = new Likelihood(_scale);
        var fits = ImmutableArray.CreateBuilder<ReadingFit>();
        for (int i = 0; i < evidence.Count; i++)
        {
            Evidence e = evidence[i];
            double before = these.Logarithm,
                healthyBefore = healthy.Logarithm;
            these.Take(e, predicted[i]);
            healthy.Take(e, e.Predicted.At(0));
            fits.Add(
                new ReadingFit(
                    e,
                    these.Distance,
                    these.Expected,
                    these.Logarithm - before - (healthy.Logarithm - healthyBefore)
                )
            );
        }

        return fits.ToImmutable();
    }

    public ImmutableArray<ConflictingReading> Conflicting(ImmutableArray<ReadingFit> fits) =>
        [
            .. fits.Where(f => f.Distance > ConflictDistance)
                .OrderByDescending(f => f.Distance)
                .Select(f => new ConflictingReading(
                    f.Evidence.Reading,
                    $"read {FaultWords.Of(f.Evidence.Reading)} with {f.Evidence.Place.Setting}; this gives "
                        + $"{FaultWords.Value(f.Evidence.Place.Instrument, f.Expected, model.Circuit.Options)}"
                )),
        ];

    /// <summary>The reading that shows a repair, and what it should be afterwards: that which speaks most against a
    /// healthy bike; null where none does.</summary>
    public string? Proof(ImmutableArray<ReadingFit> fits)
    {
        if (
            fits.Where(f => f.Distance <= ConflictDistance && f.GainOverNothing > 0.7)
                .OrderByDescending(f => f.GainOverNothing)
                .Select(f => f.Evidence)
                .FirstOrDefault()
            is not { } strongest
        )
            return null;
        Prediction healthy = strongest.Predicted.At(0);
        Instrument instrument = strongest.Place.Instrument;
        string expected;
        if (strongest.IsLook)
        {
            expected = FaultWords.Look(LookScale.Of(healthy.Value), instrument == Instrument.TestLamp);
        }
        else
        {
            double own = instrument == Instrument.Ohmmeter ? 0 : _scale.Sigma(strongest.Place, healthy.Value),
                supply = healthy.Battery * _scale.SupplyTolerance;
            double band =
                2 * Math.Sqrt(own * own + healthy.Sigma * healthy.Sigma + supply * supply + healthy.Own * healthy.Own);
            string low = FaultWords.Value(
                instrument,
                instrument == Instrument.Ohmmeter ? healthy.Value - band : Math.Max(0, healthy.Value - band),
                model.Circuit.Options
            );
            string high = FaultWords.Value(instrument, healthy.Value + band, model.Circuit.Options);
            expected = low == high ? low : $"{low} to {high}";
        }

        return $"{FaultWords.Instruction(strongest.Place, model)}: {expected} (read "
            + $"{FaultWords.Result(strongest.Reading)})";
    }

    /// <summary>The readings that a fault explains, strongest evidence first.</summary>
    public string Explained(ImmutableArray<ReadingFit> fits, bool isNothing = false)
    {
        ReadingFit[] explained =
        [
            .. fits.Where(r => r.Distance <= ConflictDistance && r.GainOverNothing > 0.7)
                .OrderByDescending(r => r.GainOverNothing)
                .Take(3),
        ];
        bool all = fits.All(r => r.Distance <= ConflictDistance);
        if (isNothing)
            return all ? ": every reading is normal" : ", although not every reading is normal";
        if (explained.Length == 0)
            return all ? " agrees with the readings" : " does not explain any reading better than a healthy bike";
        return $" explains {Listing(explained.Select(r => FaultWords.Of(r.Evidence.Reading)))}";
    }

    private static string Listing(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length == 1 ? all[0] : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private Fault FaultOf(int family)
    {
        FaultFamily of = model.Families[family];
        Particle best = posterior.Particles[posterior.Best(family)];
        FaultCase severity = model.Members[best.Low].Case;
        return of.At(
            of.IsShare ? severity with { Factor = posterior.Severity(best) } : severity,
            of.IsResistance ? Fitted(family) : null
        );
    }

    // Null where the connection is more likely open.
    private FittedResistance? Fitted(int family)
    {
        var shares = new List<(double Ohms, double Weight)>();
        double open = 0,
            sum = 0;
        for (int i = 0; i < posterior.Particles.Length; i++)
        {
            Particle p = posterior.Particles[i];
            if (p.Family != family)
                continue;
            double ohms = posterior.Severity(p),
                weight = posterior.Weights[i];
            sum += weight;
            if (double.IsInfinity(ohms))
                open += weight;
            else
                shares.Add((ohms, weight));
        }

        if (sum <= 0 || open > 0.5 * sum)
            return null;
        shares.Sort((a, b) => a.Ohms.CompareTo(b.Ohms));
        return FittedResistance.Of(shares.MaxBy(s => s.Weight).Ohms, At(0.05), At(0.95));

        double At(double share)
        {
            double passed = 0;
            foreach ((double ohms, double weight) in shares)
                if ((passed += weight) >= share * sum)
                    return ohms;
            return double.PositiveInfinity;
        }
    }
}
