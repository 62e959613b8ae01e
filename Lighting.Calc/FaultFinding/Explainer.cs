using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>Puts the faults of a posterior into words: what they are, what they explain, what speaks against them.</summary>
internal sealed class Explainer(FaultModel model, Posterior posterior, IReadOnlyList<Evidence> evidence)
{
    /// <summary>Standard deviations beyond which a reading speaks against a fault.</summary>
    public const double AgainstDistance = 3;

    private readonly ReadingScale _scale = new(model.Circuit);

    /// <summary>The fault with the severity that fits best.</summary>
    public Fault FaultOf(int family)
    {
        FaultFamily f = model.Families[family];
        (string part, string words) = FaultWords.Subject(f, model.Circuit);
        Particle best = posterior.Particles[posterior.Best(family)];
        FaultMember member = model.Members[best.Low];
        var fault = new Fault { Kind = f.Kind, Part = part, Words = words };
        return f.Kind switch
        {
            FaultKind.PoorJoint or FaultKind.PoorGround or FaultKind.PoorContact or FaultKind.PoorFuseHolder or FaultKind.BatteryWeak or FaultKind.PoorCoil => WithResistance(fault, family),
            FaultKind.BatteryFlat or FaultKind.CoilWeak => fault with { OpenVoltage = ElectricPotential.FromVolts(model.Circuit.Supply.OpenVolts * posterior.Severity(best)) },
            FaultKind.WrongLamp => fault with { Lamp = member.Case.Lamp },
            FaultKind.LampDead => fault with { DeadLamps = (int)member.Case.Factor },
            _ => fault,
        };
    }

    public FaultExplanation Explain(int family, double probability)
    {
        Fault fault = FaultOf(family);
        int best = posterior.Best(family);
        return evidence.Count == 0 ? Named(family, probability) : new FaultExplanation([fault], probability, $"{Head(fault, family)}{Explained(Fits(best), family == 0)}");
    }

    /// <summary>What the fault is, without how severe: before anything was read, or where a test is to tell that.</summary>
    public FaultExplanation Named(int family, double probability)
    {
        Fault fault = FaultOf(family);
        return new FaultExplanation([fault], probability, Words(fault, family));
    }

    /// <summary>The same of a fault that is known.</summary>
    public string Words(Fault fault, int family) => fault.Kind switch
    {
        FaultKind.PoorJoint or FaultKind.PoorGround or FaultKind.PoorContact or FaultKind.PoorFuseHolder or FaultKind.PoorCoil => $"{fault.Words} poor or open",
        FaultKind.BatteryFlat => $"{fault.Words} flat",
        FaultKind.BatteryWeak or FaultKind.CoilWeak => $"{fault.Words} weak",
        FaultKind.WrongLamp => $"{fault.Words} of other volts or watts",
        FaultKind.LampDead => $"{fault.Words} dead",
        _ => Head(fault, family).Replace(": ", " ", StringComparison.Ordinal),
    };

    /// <summary>What the fault is, without what it explains.</summary>
    public string Head(Fault fault, int family) => fault.Kind == FaultKind.None
        ? "nothing wrong"
        : $"{fault.Words}: {FaultWords.State(fault, model.Circuit, model.Families[family].Part)}";

    /// <summary>Whether readings were taken and each is one of a bike in order.</summary>
    public bool IsAsItShouldBe => evidence.Count > 0 && Fits([.. evidence.Select(e => e.Predicted.At(0))]).All(f => f.Distance <= AgainstDistance);

    /// <summary>How every reading lies to the best severity of a family.</summary>
    public ImmutableArray<ReadingFit> Fits(int particle)
    {
        Particle p = posterior.Particles[particle];
        return Fits([.. evidence.Select(e => p.Of(e.Predicted))]);
    }

    /// <summary>How every reading lies to predictions.</summary>
    public ImmutableArray<ReadingFit> Fits(IReadOnlyList<Prediction> predicted)
    {
        var these = new Likelihood(_scale);
        var healthy = new Likelihood(_scale);
        var fits = ImmutableArray.CreateBuilder<ReadingFit>();
        for (int i = 0; i < evidence.Count; i++)
        {
            Evidence e = evidence[i];
            double before = these.Logarithm, healthyBefore = healthy.Logarithm;
            these.Take(e, predicted[i]);
            healthy.Take(e, e.Predicted.At(0));
            fits.Add(new ReadingFit(e, these.Distance, these.Expected, these.Logarithm - before - (healthy.Logarithm - healthyBefore)));
        }

        return fits.ToImmutable();
    }

    public ImmutableArray<ContraryReading> Against(ImmutableArray<ReadingFit> fits) =>
    [
        .. fits.Where(f => f.Distance > AgainstDistance).OrderByDescending(f => f.Distance).Select(f => new ContraryReading(
            f.Evidence.Reading,
            $"read {FaultWords.Of(f.Evidence.Reading)} with {f.Evidence.Place.Setting}; this gives {FaultWords.Value(f.Evidence.Place.Instrument, f.Expected, model.Circuit.Options)}")),
    ];

    /// <summary>The readings a fault explains, those first that speak most for it against a bike in order.</summary>
    public string Explained(ImmutableArray<ReadingFit> fits, bool isNothing = false)
    {
        ReadingFit[] explained = [.. fits.Where(r => r.Distance <= AgainstDistance && r.GainOverNothing > 0.7).OrderByDescending(r => r.GainOverNothing).Take(3)];
        bool all = fits.All(r => r.Distance <= AgainstDistance);
        if (isNothing)
            return all ? ": every reading is as it should be" : ", though not every reading is as it should be";
        if (explained.Length == 0)
            return all ? " agrees with the readings" : " explains no reading better than a bike in order does";
        return $" explains {Listing(explained.Select(r => FaultWords.Of(r.Evidence.Reading)))}";
    }

    private static string Listing(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length == 1 ? all[0] : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }

    private Fault WithResistance(Fault fault, int family)
    {
        var shares = new List<(double Ohms, double Weight)>();
        double open = 0, sum = 0;
        for (int i = 0; i < posterior.Particles.Length; i++)
        {
            Particle p = posterior.Particles[i];
            if (p.Family != family)
                continue;
            double ohms = posterior.Severity(p), weight = posterior.Weights[i];
            sum += weight;
            if (double.IsInfinity(ohms))
                open += weight;
            else
                shares.Add((ohms, weight));
        }

        if (sum <= 0)
            return fault with { IsOpen = true };
        if (open > 0.5 * sum)
            return fault with { IsOpen = true };
        shares.Sort((a, b) => a.Ohms.CompareTo(b.Ohms));
        double low = At(0.05), high = At(0.95);
        return fault with
        {
            Resistance = new FittedResistance(
                ElectricResistance.FromOhms(shares.MaxBy(s => s.Weight).Ohms),
                ElectricResistance.FromOhms(low),
                double.IsInfinity(high) ? null : ElectricResistance.FromOhms(high)),
        };

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
