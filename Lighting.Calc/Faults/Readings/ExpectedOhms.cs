using UnitsNet;

namespace Lighting.Calc;

/// <summary>Resistance that an ohmmeter shows on a lamp, run or fuse of a healthy bike, battery disconnected and
/// everything off.</summary>
public sealed class ExpectedOhms
{
    internal ExpectedOhms(string part, double? inCircuit, double? isolated, bool isKnown)
    {
        (Part, IsKnown) = (part, isKnown);
        InCircuit = inCircuit is { } together ? ElectricResistance.FromOhms(together) : null;
        Isolated = isolated is { } alone ? ElectricResistance.FromOhms(alone) : null;
    }

    /// <summary>The lamp, run or fuse.</summary>
    public string Part { get; }

    /// <summary>In-circuit resistance, with all else joined to the part's two points; null for open. An ohmmeter's
    /// leads add their own.</summary>
    public ElectricResistance? InCircuit { get; }

    /// <summary>Out-of-circuit resistance, a filament cold; null where the lists do not say (an LED, an
    /// ignition).</summary>
    public ElectricResistance? Isolated { get; }

    /// <summary>Whether the lists say what an ohmmeter shows in circuit.</summary>
    public bool IsKnown { get; }
}
