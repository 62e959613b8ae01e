using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Lamps with too large a voltage drop, too high a voltage, or a driver that drops out.</summary>
internal static class LampChecks
{
    // Filaments burn out fast above this share of their reference voltage (life falls by the 13th power): common
    // practice, no source.
    internal const double OverVoltsRatio = 1.25;

    /// <param name="bike">The bike.</param>
    /// <param name="settings">Its operating points, one of each set of currents at least.</param>
    /// <param name="worst">For each lamp the operating point with its largest voltage drop.</param>
    /// <param name="graph">The wiring.</param>
    public static IEnumerable<Finding> Of(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        ImmutableArray<OperatingPoint?> worst,
        HarnessGraph graph
    )
    {
        for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
            foreach (Finding finding in OfLamp(bike, settings, worst[lamp], lamp, graph))
                yield return finding;
    }

    private static IEnumerable<Finding> OfLamp(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        OperatingPoint? worst,
        int lamp,
        HarnessGraph graph
    )
    {
        string name = bike.Lamps[lamp].Lamp;
        if (worst is null)
            yield break;
        LampState state = worst.Lamps[lamp];
        if (state.DroppedOut)
            yield return new Finding(FindingKind.DriverDropsOut, Severity.Fault, name)
            {
                Value = state.Voltage,
                Setting = worst.Setting,
            };
        // In series with another load, a ballast say, it has its share of the voltage: no wire is to blame.
        else if (
            DropLimit.Of(bike, bike.Lamps[lamp], worst.SupplyVoltage) is var limit
            && limit.IsExceededBy(state.Drop!.Value)
            && graph.IsFed(graph.Lamps[lamp], graph.Switches.ClosedIn(worst.Setting))
        )
            yield return new Finding(
                FindingKind.VoltageDropTooLarge,
                limit.IsAdvice ? Severity.Caution : Severity.Fault,
                name
            )
            {
                Value = state.Drop,
                Limit = limit.Share,
                Setting = worst.Setting,
            };
        if (settings.FirstOrDefault(s => s.Solved.LampMayDropOut(lamp)) is { } edge)
            yield return new Finding(FindingKind.DriverMayDropOut, Severity.Caution, name)
            {
                Value = edge.Lamps[lamp].Voltage,
                Setting = edge.Setting,
            };
        LampSpecification specification = state.Lamp.Specification;
        double most = settings.Max(s => s.Solved.LampVolts(lamp)),
            highest = specification.MaximumVoltage?.Volts ?? OverVoltsRatio * specification.ReferenceVoltage.Volts;
        if (specification.Type is LampType.Filament or LampType.Halogen && most > highest)
            yield return new Finding(FindingKind.LampOvervoltage, Severity.Fault, name)
            {
                Value = ElectricPotential.FromVolts(most),
                Limit = specification.MaximumVoltage ?? specification.ReferenceVoltage,
                Detail = specification.MaximumVoltage is null ? "rated" : "highest permitted",
            };
    }
}
