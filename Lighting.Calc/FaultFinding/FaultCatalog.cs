using System.Collections.Immutable;
using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;
using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>Every single fault of every part of a bike, each in its severities, with its prior.</summary>
/// <remarks>
/// A short of a battery before any fuse is not among them: it burns its wire and needs no meter. A poor joint and an open one are severities of one fault, for one repair mends both. Before anything is read the resistance
/// of a poor joint is log-normal about 2 Ω with a standard deviation of one decade; what takes less than 3 % of the volts, a tenth
/// of a lamp's light, is seldom complained of and so much the less likely: common practice, no source.
/// </remarks>
internal static class FaultCatalog
{
    private static readonly ImmutableArray<double> s_decades = [.. Enumerable.Range(0, 5).Select(k => Math.Pow(10, -1.25 + 0.25 * k)), .. Enumerable.Range(0, 9).Select(k => Math.Pow(10, 0.125 * k)), 18, 32, 56, 100, 300, 1000, 10_000];
    private static readonly ImmutableArray<double> s_weakOhms = [.. Enumerable.Range(0, 11).Select(k => 0.05 * Math.Pow(2, 0.5 * k)), .. Enumerable.Range(0, 10).Select(k => 1.9 * Math.Pow(10, 0.06 * k))];
    private static readonly ImmutableArray<double> s_flatShares = [0.95, 0.92, 0.88, 0.83, 0.77, 0.7, 0.6, 0.45, 0.3];

    private static readonly ImmutableArray<double> s_coilShares = [0.88, 0.8, 0.72, 0.64, 0.56, 0.48, 0.4, 0.3, 0.2];

    private const double Different = 2;
    private const double NoticedShare = 0.03;

    /// <summary>No fault.</summary>
    public static FaultFamily Nothing(double prior) => new(FaultKind.None, 0, prior, [new FaultCase(0, 1)]);

    /// <summary>The faults; "nothing" comes first.</summary>
    public static ImmutableArray<FaultFamily> Of(FaultCircuit circuit, HealthyCurrents currents)
    {
        Bike bike = circuit.Bike;
        FaultFindingOptions options = circuit.Options;
        var weighed = new List<FaultFamily> { Nothing(options.Weight("nothing")) };
        for (int i = 0; i < bike.Runs.Length; i++)
        {
            Run run = bike.Runs[i];
            bool ground = circuit.Sides.IsEarth(run.From) && circuit.Sides.IsEarth(run.To);
            double poor = options.Weight(ground ? "ground joint poor" : "joint poor") * Math.Max(1, run.Joints);
            weighed.Add(Poor(ground ? FaultKind.PoorGround : FaultKind.PoorJoint, i, poor, options.Weight(ground ? "ground open" : "joint open"), Noticed(currents.Runs[i])));
        }

        for (int i = 0; i < bike.Switches.Length; i++)
        {
            weighed.Add(Poor(FaultKind.PoorContact, i, options.Weight("contact poor"), options.Weight("contact never closes"), Noticed(currents.Contacts[i])));
            weighed.Add(new FaultFamily(FaultKind.ContactNeverOpens, i, options.Weight("contact never opens"), [new FaultCase(0, 1)]));
        }

        for (int i = 0; i < bike.Fuses.Length; i++)
        {
            weighed.Add(Poor(FaultKind.PoorFuseHolder, i, options.Weight("fuse holder poor"), 0, Noticed(currents.Fuses[i])));
            weighed.Add(new FaultFamily(FaultKind.FuseBlown, i, options.Weight("fuse blown"), [new FaultCase(double.PositiveInfinity, 1)]));
        }

        for (int i = 0; i < circuit.Points.Length; i++)
            if (circuit.Sides.IsLive(circuit.Points[i]) && (circuit.FuseBefore[i] >= 0 || circuit.Supply.Coil is not null))
                weighed.Add(new FaultFamily(FaultKind.ShortToFrame, i, options.Weight("short to frame"), [new FaultCase(FaultCircuit.ShortOhms, 1)]));
        for (int i = 0; i < bike.Lamps.Length; i++)
            weighed.AddRange(OfLamp(bike.Lamps[i], i, circuit));
        if (circuit.Supply.Coil is null)
        {
            weighed.Add(new FaultFamily(FaultKind.BatteryFlat, 0, options.Weight("battery flat"), Shares(s_flatShares)));
            weighed.Add(new FaultFamily(FaultKind.BatteryWeak, 0, options.Weight("battery weak"), [.. s_weakOhms.Select(r => new FaultCase(r, 1.0 / s_weakOhms.Length))]));
        }
        else
        {
            weighed.Add(new FaultFamily(FaultKind.CoilWeak, 0, options.Weight("coil weak"), Shares(s_coilShares)));
            weighed.Add(Poor(FaultKind.PoorCoil, 0, options.Weight("coil joint poor"), options.Weight("coil open"), Noticed(currents.Source)));
        }

        double sum = weighed.Sum(f => f.Prior);
        return [.. weighed.Select(f => f with { Prior = f.Prior / sum })];

        // Ohms that are noticed in a part: where none of the settings gives it a current, all are alike.
        double Noticed(double amperes) => amperes > 1e-3 ? NoticedShare * circuit.Supply.FullVolts / amperes : 0;
    }

    private static ImmutableArray<FaultCase> Shares(ImmutableArray<double> shares) => [.. shares.Select(s => new FaultCase(0, 1.0 / shares.Length, s))];

    private static FaultFamily Poor(FaultKind kind, int part, double poor, double open, double noticed)
    {
        // Each severity stands for the decades about it.
        double[] shares = [.. s_decades.Select((r, i) => 1 / (1 + Math.Pow(noticed / r, 2)) * Math.Exp(-Math.Pow(Math.Log10(r / 2), 2) / 2) * Math.Log(s_decades[Math.Min(i + 1, s_decades.Length - 1)] / s_decades[Math.Max(i - 1, 0)]))];
        double scale = poor / (poor + open) / shares.Sum();
        var cases = s_decades.Select((r, i) => new FaultCase(r, shares[i] * scale));
        return new FaultFamily(kind, part, poor + open, open > 0 ? [.. cases, new FaultCase(double.PositiveInfinity, open / (poor + open))] : [.. cases]);
    }

    private static IEnumerable<FaultFamily> OfLamp(FittedLamp lamp, int index, FaultCircuit circuit)
    {
        (Bike bike, FaultFindingOptions options) = (circuit.Bike, circuit.Options);
        ImmutableArray<FaultCase> dead = lamp.Quantity == 1
            ? [new FaultCase(double.PositiveInfinity, 1)]
            : [new FaultCase(double.PositiveInfinity, 0.8), new FaultCase(double.PositiveInfinity, 0.2, lamp.Quantity)];
        yield return new FaultFamily(FaultKind.LampDead, index, options.Weight("lamp dead") * lamp.Quantity, dead);
        ImmutableArray<LampSpecification> others = Others(lamp.Specification, bike);
        if (!others.IsEmpty)
            yield return new FaultFamily(FaultKind.WrongLamp, index, options.Weight("lamp wrong"), [.. others.Select(o => new FaultCase(0, 1.0 / others.Length, Lamp: o))]);
        if (lamp.Specification.Type is LampType.Led or LampType.LedBallast && circuit.Supply.Coil is null)
            yield return new FaultFamily(FaultKind.LedReversed, index, options.Weight("led reversed") * lamp.Quantity, [new FaultCase(0, 1)]);
    }

    // What is sold with the same cap: the next lower and the next higher watts, and the lamp of a higher system's volts.
    // (One of lower volts would have burnt out: a dead lamp.) Smaller differences cannot be told from the right lamp.
    private static ImmutableArray<LampSpecification> Others(LampSpecification right, Bike bike)
    {
        if (right.Type is LampType.Fixed or LampType.Resistor)
            return [];
        double watts = (double)right.ReferencePower.Watts;
        if (right.Code is not { } code || !LampTable.TryFind(code, bike.SystemVoltage, out PublishedLamp? published) || published!.Cap.Length == 0)
            return [LampSpecification.FromPower(right.Type, right.ReferenceVoltage, Power.FromWatts(watts / 2), right.MinimumVoltage), LampSpecification.FromPower(right.Type, right.ReferenceVoltage, Power.FromWatts(watts * 2), right.MinimumVoltage)];
        PublishedLamp[] sameCap = [.. LampTable.All.Where(l => l.Cap == published.Cap && l.Specification.Type == right.Type)];
        PublishedLamp[] sameVolts = [.. sameCap.Where(l => Math.Abs(l.SystemVoltage.Volts - published.SystemVoltage.Volts) < 0.5)];
        PublishedLamp?[] found =
        [
            sameVolts.Where(l => Watts(l) < watts / Different).MaxBy(Watts),
            sameVolts.Where(l => Watts(l) > watts * Different).MinBy(Watts),
            sameCap.Where(l => l.SystemVoltage.Volts > bike.SystemVoltage.Volts * 1.5).MinBy(l => Math.Abs(Watts(l) - watts)),
        ];
        return [.. found.OfType<PublishedLamp>().Select(l => l.Specification)];

        static double Watts(PublishedLamp lamp) => (double)lamp.Specification.ReferencePower.Watts;
    }
}
