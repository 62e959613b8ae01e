using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the lamps' volts say against the bike: too much lost, too many, or a driver that gives up.</summary>
internal static class LampChecks
{
    // Filaments burn out fast above this share of their reference volts (life falls by the 13th power): common practice, no source.
    internal const double OverVoltsRatio = 1.25;

    /// <param name="bike">The bike.</param>
    /// <param name="settings">Its operating points, one of each set of currents at least.</param>
    /// <param name="worst">For each lamp the operating point at which it loses most.</param>
    public static IEnumerable<Finding> Of(Bike bike, IReadOnlyList<OperatingPoint> settings, ImmutableArray<OperatingPoint?> worst)
    {
        for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
            foreach (Finding finding in OfLamp(bike, settings, worst[lamp], lamp))
                yield return finding;
    }

    private static IEnumerable<Finding> OfLamp(Bike bike, IReadOnlyList<OperatingPoint> settings, OperatingPoint? worst, int lamp)
    {
        string name = bike.Lamps[lamp].Lamp;
        if (worst is null)
            yield break;
        LampState state = worst.Lamps[lamp];
        double lost = state.Drop!.Value.Percent;
        if (state.DroppedOut)
            yield return new Finding(Severity.Fault, name, Said($"its driver drops out at {state.Voltage.Volts:F2} V in the setting '{worst.Setting}': it cannot hold its power."));
        else if (lost > bike.AllowedDrop.Percent + 1e-9)
            yield return new Finding(Severity.Fault, name, Said($"it loses {lost:F1} % of the source volts in the setting '{worst.Setting}', more than the {bike.AllowedDrop.Percent:0.###} % allowed."));
        if (settings.FirstOrDefault(s => s.Solved.LampMayDropOut(lamp)) is { } edge)
            yield return new Finding(Severity.Caution, name, Said($"its driver may drop out in the setting '{edge.Setting}': lit at {edge.Lamps[lamp].Voltage.Volts:F2} V, but it can also stay dark, as when it is switched on at low volts."));
        LampSpecification specification = state.Lamp.Specification;
        double most = settings.Max(s => s.Solved.LampVolts(lamp)), reference = specification.ReferenceVoltage.Volts, ratio = most / reference;
        if (specification.Type is LampType.Filament or LampType.Halogen && ratio > OverVoltsRatio)
            yield return new Finding(Severity.Fault, name, Said($"it gets {most:F2} V, {ratio:F2} times its {reference:0.###} V: it will burn out."));
    }

    private static string Said(FormattableString text) => FormattableString.Invariant(text);
}
