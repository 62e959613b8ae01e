using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a fitted lamp is for: by its published use where it has a code, else by its circuit and
/// name.</summary>
internal static class LampUses
{
    private const string Headlamp = "headlamp";
    private const string Stop = "stop";

    /// <summary>Whether a lamp is a headlamp.</summary>
    public static bool IsHeadlamp(FittedLamp lamp, ElectricPotential systemVoltage) =>
        Uses(lamp, systemVoltage) is { } uses
            ? uses.Contains(Headlamp)
            : lamp.Circuit.Contains("head", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a lamp is a stop lamp; one code may serve as stop lamp and as indicator, so that its name
    /// decides.</summary>
    public static bool IsStopLamp(FittedLamp lamp, ElectricPotential systemVoltage) =>
        Uses(lamp, systemVoltage)?.Contains(Stop) != false
        && (
            lamp.Lamp.Contains(Stop, StringComparison.OrdinalIgnoreCase)
            || lamp.Lamp.Contains("brake", StringComparison.OrdinalIgnoreCase)
        )
        && lamp.Specification.Type is not (LampType.Fixed or LampType.Resistor);

    private static string[]? Uses(FittedLamp lamp, ElectricPotential systemVoltage) =>
        lamp.Specification.Code is { } code && LampTable.TryFind(code, systemVoltage, out PublishedLamp? published)
            ? published.Use.Split('|')
            : null;
}
