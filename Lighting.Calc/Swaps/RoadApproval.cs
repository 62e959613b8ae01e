using UnitsNet;

namespace Lighting.Calc;

/// <summary>Tells which lamps are approved together with their light source, so that an LED in them is a legal
/// matter.</summary>
/// <remarks>UN Regulations 50 and 113, 148 and 149 approve motorcycle lamps with sources of Regulation 37; FMVSS 108
/// likewise (from memory). Instrument lamps are not.</remarks>
internal static class RoadApproval
{
    // By the lamp table's use; where a lamp has no code, by its circuit's and its own name.
    private static readonly string[] s_uses =
    [
        "headlamp",
        "auxiliary",
        "stop",
        "tail",
        "position",
        "number plate",
        "indicator",
        "reversing",
    ];
    private static readonly string[] s_words =
    [
        "head",
        "low beam",
        "high beam",
        "dip",
        "stop",
        "brake",
        "tail",
        "rear",
        "position",
        "pilot",
        "parking",
        "plate",
        "indicators",
        "turn",
        "flasher",
    ];

    public static bool Concerns(FittedLamp lamp, ElectricPotential systemVoltage)
    {
        if (IsInstrument(lamp.Circuit) || IsInstrument(lamp.Lamp))
            return false;
        if (
            lamp.Specification.Code is { } code
            && LampTable.TryFind(code, systemVoltage, out PublishedLamp? published)
            && published!.Use.Split('|') is var uses
            && !uses.Contains("instrument")
        )
            return uses.Any(u => s_uses.Contains(u));
        return s_words.Any(w =>
            lamp.Circuit.Contains(w, StringComparison.OrdinalIgnoreCase)
            || lamp.Lamp.Contains(w, StringComparison.OrdinalIgnoreCase)
        );
    }

    private static bool IsInstrument(string name) =>
        new[] { "instrument", "panel", "dash", "tell", "warning" }.Any(w =>
            name.Contains(w, StringComparison.OrdinalIgnoreCase)
        );
}
