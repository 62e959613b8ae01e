using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp of another voltage or power than the list's.</summary>
/// <param name="circuit">The bike's circuit.</param>
/// <param name="lamp">Index of the lamp.</param>
/// <param name="others">What may be fitted in its place, at least one.</param>
internal sealed class WrongLamp(FaultCircuit circuit, int lamp, ImmutableArray<LampSpecification> others)
    : LampFault(
        circuit,
        FaultKind.WrongLamp,
        lamp,
        circuit.Options.Weight("lamp wrong"),
        [.. others.Select(o => new FaultCase(0, 1.0 / others.Length, Lamp: o))]
    )
{
    private const double Different = 2;

    /// <summary>What is sold with the same cap: the next lower and the next higher power, and the lamp of a higher
    /// system voltage.</summary>
    /// <remarks>One of a lower voltage would have burnt out: a dead lamp. Smaller differences cannot be distinguished
    /// from the right lamp.</remarks>
    public static ImmutableArray<LampSpecification> Others(LampSpecification right, Bike bike)
    {
        if (right.Type is LampType.Fixed or LampType.Resistor)
            return [];
        double watts = (double)right.ReferencePower.Watts;
        if (
            right.Code is not { } code
            || !LampTable.TryFind(code, bike.SystemVoltage, out PublishedLamp? published)
            || published!.Cap.Length == 0
        )
            return
            [
                LampSpecification.FromPower(
                    right.Type,
                    right.ReferenceVoltage,
                    Power.FromWatts(watts / 2),
                    right.MinimumVoltage
                ),
                LampSpecification.FromPower(
                    right.Type,
                    right.ReferenceVoltage,
                    Power.FromWatts(watts * 2),
                    right.MinimumVoltage
                ),
            ];
        PublishedLamp[] sameCap =
        [
            .. LampTable.All.Where(l => l.Cap == published.Cap && l.Specification.Type == right.Type),
        ];
        PublishedLamp[] sameVoltage =
        [
            .. sameCap.Where(l => Math.Abs(l.SystemVoltage.Volts - published.SystemVoltage.Volts) < 0.5),
        ];
        PublishedLamp?[] found =
        [
            sameVoltage.Where(l => Watts(l) < watts / Different).MaxBy(Watts),
            sameVoltage.Where(l => Watts(l) > watts * Different).MinBy(Watts),
            sameCap
                .Where(l => l.SystemVoltage.Volts > bike.SystemVoltage.Volts * 1.5)
                .MinBy(l => Math.Abs(Watts(l) - watts)),
        ];
        return [.. found.OfType<PublishedLamp>().Select(l => l.Specification)];

        static double Watts(PublishedLamp lamp) => (double)lamp.Specification.ReferencePower.Watts;
    }

    public override string? Repair => $"Fit the listed lamp as {PartName}.";

    public override void PutIn(FaultyHarness harness, FaultCase severity) => harness.Lamps[Part].Other = severity.Lamp;

    public override Fault At(FaultCase severity, FittedResistance? fitted) => new(this) { Lamp = severity.Lamp };

    public override string Title(Fault fault) => $"{Subject} of another voltage or power";

    protected override string State(Fault fault) => $"a {fault.Lamp!.Code ?? VoltsAndWatts(fault.Lamp)} in its place";

    private static string VoltsAndWatts(LampSpecification lamp) =>
        FormattableString.Invariant(
            $"{lamp.ReferenceVoltage.Volts:0.#} V {(double)lamp.ReferencePower.Watts:0.#} W lamp"
        );
}
