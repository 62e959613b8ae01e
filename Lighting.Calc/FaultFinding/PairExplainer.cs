using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>Puts pairs of faults into words.</summary>
internal sealed class PairExplainer(FaultModel model, Explainer explainer)
{
    private const string And = ", together with ";

    public FaultGroup Group(FaultPair pair, double probability)
    {
        ImmutableArray<ReadingFit> fits = explainer.Fits(pair.Predicted);
        ImmutableArray<Fault> faults = FaultsOf(pair);
        string head = string.Join(And, pair.Members.Select((m, i) => explainer.Head(faults[i], model.Families.IndexOf(m.Family))));
        return new FaultGroup
        {
            Probability = probability,
            Alternatives = [new FaultExplanation(faults, probability, head + explainer.Explained(fits))],
            Against = explainer.Against(fits),
        };
    }

    /// <summary>What the pair is, without how severe.</summary>
    public FaultExplanation Named(FaultPair pair, double probability)
    {
        ImmutableArray<Fault> faults = FaultsOf(pair);
        return new FaultExplanation(faults, probability, string.Join(And, pair.Members.Select((m, i) => explainer.Words(faults[i], model.Families.IndexOf(m.Family)))));
    }

    private ImmutableArray<Fault> FaultsOf(FaultPair pair) => [.. pair.Members.Select((m, i) => FaultAt(m, pair.Spread[i]))];

    private Fault FaultAt(FaultMember member, (double Low, double High)? spread)
    {
        (string part, string words) = FaultWords.Subject(member.Family, model.Circuit);
        var fault = new Fault { Kind = member.Family.Kind, Part = part, Words = words };
        return member.Family.Kind switch
        {
            FaultKind.BatteryFlat or FaultKind.CoilWeak => fault with { OpenVoltage = ElectricPotential.FromVolts(model.Circuit.Supply.OpenVolts * member.Case.Factor) },
            FaultKind.WrongLamp => fault with { Lamp = member.Case.Lamp },
            FaultKind.LampDead => fault with { DeadLamps = (int)member.Case.Factor },
            _ when spread is { } s => fault with
            {
                Resistance = new FittedResistance(ElectricResistance.FromOhms(member.Case.Ohms), ElectricResistance.FromOhms(s.Low), double.IsInfinity(s.High) ? null : ElectricResistance.FromOhms(s.High)),
            },
            _ => fault with { IsOpen = member.Family.IsContinuous },
        };
    }
}
