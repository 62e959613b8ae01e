using UnitsNet;

namespace Lighting.Calc;

/// <summary>A fuse at one operating point.</summary>
public sealed record FuseState
{
    internal FuseState(Fuse fuse, ElectricCurrent current, ElectricPotential drop) =>
        (Fuse, Current, Drop) = (fuse, current, drop);

    /// <summary>The fuse.</summary>
    public Fuse Fuse { get; }

    /// <summary>Current through it, without sign.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Voltage lost in its resistance, without sign.</summary>
    public ElectricPotential Drop { get; }
}
