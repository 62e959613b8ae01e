using UnitsNet;

namespace Lighting.Calc;

/// <summary>A fuse at one operating point.</summary>
/// <param name="Fuse">The fuse.</param>
/// <param name="Current">Current through it, without sign.</param>
/// <param name="Drop">Volts lost in its resistance, without sign.</param>
public sealed record FuseState(Fuse Fuse, ElectricCurrent Current, ElectricPotential Drop);
