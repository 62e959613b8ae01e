using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>What an ohmmeter shows on a lamp, run or fuse of a bike in order, battery disconnected and everything off.</summary>
/// <param name="Part">The lamp, run or fuse.</param>
/// <param name="InPlace">Ohms between its two points with all else joined to them; null for open. An ohmmeter's leads add their own.</param>
/// <param name="Alone">Ohms of the part taken out, a filament cold; null where the lists do not say (an LED, an ignition).</param>
/// <param name="IsKnown">Whether the lists say what an ohmmeter shows in place.</param>
public sealed record ExpectedOhms(string Part, ElectricResistance? InPlace, ElectricResistance? Alone, bool IsKnown);
