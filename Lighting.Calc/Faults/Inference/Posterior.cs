using System.Buffers;
using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Probabilities of all single faults, given readings.</summary>
/// <remarks>
/// A reading is normal about its prediction, with the instrument's error and the harness's tolerance; a share of
/// readings is plainly wrong and lies anywhere (<see cref="FaultFindingOptions.BlunderShare"/>), so that no single
/// reading is certain. What is common to all readings, the battery's voltage and the harness's tolerance, is filtered
/// along (<see cref="Likelihood"/>). Looks have the probabilities of <see cref="LookScale"/>. Severities lie on a grid,
/// with the predictions interpolated between. What is not listed shows as what is listed, but for some of the readings
/// (<see cref="NotListed"/>).
/// </remarks>
internal sealed class Posterior
{
    private readonly FaultModel _model;

    private Posterior(
        FaultModel model,
        ImmutableArray<Particle> particles,
        double[] weights,
        double[] resembling,
        double[] logLikelihood,
        double logEvidence
    )
    {
        LogEvidence = logEvidence;
        _model = model;
        Particles = particles;
        Weights = weights;
        LogLikelihood = logLikelihood;
        FamilyWeights = new double[model.Families.Length];
        MemberWeights = new double[model.Members.Length];
        ResemblingWeights = new double[model.Members.Length];
        ResemblingFamilies = new double[model.Families.Length];
        for (int i = 0; i < weights.Length; i++)
        {
            Particle p = particles[i];
            FamilyWeights[p.Family] += weights[i];
            MemberWeights[p.Low] += weights[i] * (1 - p.Part);
            MemberWeights[p.High] += weights[i] * p.Part;
            ResemblingFamilies[p.Family] += resembling[i];
            ResemblingWeights[p.Low] += resembling[i] * (1 - p.Part);
            ResemblingWeights[p.High] += resembling[i] * p.Part;
        }
    }

    public ImmutableArray<Particle> Particles { get; }

    public double[] Weights { get; }

    public double[] LogLikelihood { get; }

    public double[] FamilyWeights { get; }

    /// <summary>Logarithm of the probability of all readings together.</summary>
    public double LogEvidence { get; }

    /// <summary>What the likeliest fault says of the battery's voltage, as a share above the list's.</summary>
    public double BatteryMean { get; private init; }

    /// <summary>Variance of <see cref="BatteryMean"/>.</summary>
    public double BatteryVariance { get; private init; }

    /// <summary>The weights brought to the severities that were solved.</summary>
    public double[] MemberWeights { get; }

    /// <summary>Of what is not listed, the weight of that which resembles each severity; together the weight of what is
    /// not listed.</summary>
    public double[] ResemblingWeights { get; }

    /// <summary>The same of each family.</summary>
    public double[] ResemblingFamilies { get; }

    /// <summary>Share of the readings that what is not listed changes, by those taken.</summary>
    public double Changed { get; private init; }

    public static ImmutableArray<Particle> Grid(FaultModel model)
    {
        const int steps = 12;
        var particles = ImmutableArray.CreateBuilder<Particle>();
        int first = 0;
        for (int f = 0; f < model.Families.Length; f++)
        {
            FaultFamily family = model.Families[f];
            int start = particles.Count;
            double prior = 0,
                sum = 0;
            for (int c = 0; c < family.Cases.Length; c++)
            {
                bool goesOn =
                    family.IsContinuous && c + 1 < family.Cases.Length && double.IsFinite(family.Cases[c + 1].Ohms);
                int count = goesOn ? steps : 1;
                double here = model.PriorOf(first + c);
                prior += here;
                for (int k = 0; k < count; k++)
                {
                    double part = (double)k / steps;
                    double share = goesOn ? ((1 - part) * here + part * model.PriorOf(first + c + 1)) / steps : here;
                    // The last severity before an open one closes the grid with half a step only.
                    if (
                        !goesOn
                        && family.IsContinuous
                        && double.IsFinite(family.Cases[c].Ohms)
                        && family.Cases.Length > 1
                    )
                        share /= steps;
                    sum += share;
                    int high = goesOn ? first + c + 1 : first + c,
                        last = family.Cases.Length - (double.IsFinite(family.Cases[^1].Ohms) ? 1 : 2);
                    particles.Add(
                        new Particle(
                            f,
                            first + c,
                            high,
                            part,
                            share,
                            first + Math.Max(0, c - 1),
                            Math.Max(high, Math.Min(first + last, high + 1))
                        )
                    );
                }
            }

            for (int i = start; i < particles.Count; i++)
                particles[i] = particles[i] with { Prior = particles[i].Prior / sum * prior };
            first += family.Cases.Length;
        }

        return particles.ToImmutable();
    }

    public static Posterior Of(FaultModel model, ImmutableArray<Particle> particles, IReadOnlyList<Evidence> evidence)
    {
        var logLikelihood = new double[particles.Length];
        double[] resembling = ArrayPool<double>.Shared.Rent(particles.Length * NotListed.Shares);
        var scale = new ReadingScale(model.Circuit);
        double heaviest = double.NegativeInfinity,
            mean = 0,
            variance = 0;
        int broad = -1;
        for (int i = 0; i < particles.Length; i++)
        {
            Particle p = particles[i];
            if (model.Families[p.Family].IsBroad)
            {
                broad = i;
                logLikelihood[i] = double.NegativeInfinity;
                resembling.AsSpan(i * NotListed.Shares, NotListed.Shares).Fill(double.NegativeInfinity);
                continue;
            }

            var likelihood = new Likelihood(scale);
            foreach (Evidence e in evidence)
                likelihood.Take(e, p.Of(e.Predicted));
            logLikelihood[i] = likelihood.Logarithm;
            for (int k = 0; k < NotListed.Shares; k++)
                resembling[i * NotListed.Shares + k] = likelihood.Resembling(k);
            double weight = Math.Log(p.Prior) + likelihood.Logarithm;
            if (weight > heaviest)
                (heaviest, mean, variance) = (weight, likelihood.BatteryMean, likelihood.BatteryVariance);
        }

        double most = Math.Max(logLikelihood.Max(), Maximum(resembling.AsSpan(0, particles.Length * NotListed.Shares))),
            notListed = 0,
            changed = 0;
        var weights = new double[particles.Length];
        var like = new double[particles.Length];
        for (int i = 0; i < weights.Length; i++)
        {
            if (i == broad)
                continue;
            weights[i] = particles[i].Prior * Math.Exp(logLikelihood[i] - most);
            // What resembles nothing that is wrong has a prior of its own.
            double prior =
                particles[i].Family == 0
                    ? (broad < 0 ? 0 : particles[broad].Prior)
                    : NotListed.Resembling * particles[i].Prior;
            for (int k = 0; k < NotListed.Shares; k++)
            {
                double weight = prior / NotListed.Shares * Math.Exp(resembling[i * NotListed.Shares + k] - most);
                like[i] += weight;
                changed += weight * NotListed.Changed(k);
            }

            notListed += like[i];
        }

        ArrayPool<double>.Shared.Return(resembling);
        if (broad >= 0)
            weights[broad] = notListed;
        double sum = weights.Sum();
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] /= sum;
            like[i] /= sum;
        }

        return new Posterior(model, particles, weights, like, logLikelihood, most + Math.Log(sum))
        {
            BatteryMean = mean,
            BatteryVariance = variance,
            Changed = notListed > 0 ? changed / notListed : 0,
        };
    }

    private static double Maximum(ReadOnlySpan<double> values)
    {
        double most = double.NegativeInfinity;
        foreach (double value in values)
            most = Math.Max(most, value);
        return most;
    }

    /// <summary>The likeliest severity of a family, prior included; of severities that are as likely but for rounding,
    /// the first.</summary>
    public int Best(int family)
    {
        const double More = 1 + 1e-9;
        int best = -1;
        for (int i = 0; i < Particles.Length; i++)
            if (Particles[i].Family == family && (best < 0 || Weights[i] > More * Weights[best]))
                best = i;
        return best;
    }

    /// <summary>Severity of a particle: resistance, or a flat battery's or low-output coil's share of
    /// voltage.</summary>
    public double Severity(in Particle particle)
    {
        FaultMember low = _model.Members[particle.Low],
            high = _model.Members[particle.High];
        return low.Family.IsShare ? low.Case.Factor + particle.Part * (high.Case.Factor - low.Case.Factor)
            : particle.Part == 0 ? low.Case.Ohms
            : low.Case.Ohms * Math.Pow(high.Case.Ohms / low.Case.Ohms, particle.Part);
    }
}
