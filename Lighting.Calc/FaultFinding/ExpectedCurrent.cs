using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>What an ammeter shows in the place of a fuse on a bike in order.</summary>
/// <param name="Fuse">The fuse.</param>
/// <param name="Current">Amps, without sign.</param>
/// <param name="Lowest">Below this it is worth asking why: two standard deviations.</param>
/// <param name="Highest">Above this it is worth asking why.</param>
public sealed record ExpectedCurrent(string Fuse, ElectricCurrent Current, ElectricCurrent Lowest, ElectricCurrent Highest);
