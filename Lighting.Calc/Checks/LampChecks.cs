using System.Collections.Immutable;
using System.Globalization;
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
    /// <param name="worst">For each lamp the operating point with its largest voltage drop that lasts.</param>
    /// <param name="graph">The wiring.</param>
    public static IEnumerable<Finding> Of(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        ImmutableArray<OperatingPoint?> worst,
        HarnessGraph graph
    )
    {
        ImmutableArray<OperatingPoint?> momentary = IntendedOnStates.WorstOfEachMomentary(bike, settings);
        for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
            if (worst[lamp] is { } lasting)
                foreach (Finding finding in OfLamp(bike, settings, lasting, momentary[lamp] ?? lasting, lamp, graph))
                    yield return finding;
    }

    private static IEnumerable<Finding> OfLamp(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        OperatingPoint worst,
        OperatingPoint worstMomentary,
        int lamp,
        HarnessGraph graph
    )
    {
        string name = bike.Lamps[lamp].Lamp;
        LampState state = worst.Lamps[lamp];
        if (new[] { worst, worstMomentary }.FirstOrDefault(p => p.Lamps[lamp].DroppedOut) is { } dark)
            yield return new Finding(FindingKind.DriverDropsOut, Severity.Fault, name)
            {
                Value = dark.Lamps[lamp].Voltage,
                Setting = dark.Setting,
            };
        else if (Exceeded(worst) is { } limit)
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
        else if (Exceeded(worstMomentary) is { IsAdvice: false } momentary)
            yield return new Finding(FindingKind.MomentaryVoltageDrop, Severity.Caution, name)
            {
                Value = worstMomentary.Lamps[lamp].Drop,
                Limit = momentary.Share,
                Setting = worstMomentary.Setting,
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
                Limit = ElectricPotential.FromVolts(highest),
                Detail = specification.MaximumVoltage is null
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $"{OverVoltsRatio} times the {specification.ReferenceVoltage.Volts:0.##} V of its figures"
                    )
                    : "the highest voltage it is permitted at",
            };

        // In series with another load, a ballast say, it has its share of the voltage: no wire is to blame.
        DropLimit? Exceeded(OperatingPoint point) =>
            DropLimit.Of(bike, bike.Lamps[lamp], point.SupplyVoltage) is var limit
            && limit.IsExceededBy(point.Lamps[lamp].Drop!.Value)
            && graph.IsFed(graph.Lamps[lamp], graph.Switches.ClosedIn(point.Setting))
                ? limit
                : null;
    }
}
