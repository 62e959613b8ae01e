using UnitsNet;

namespace Lighting.Calc;

/// <summary>One line of a lamp's ledger: a part and the volts it takes.</summary>
/// <param name="Kind">What sort of part.</param>
/// <param name="Part">Name of the run, contact or fuse; <c>battery</c> for the battery.</param>
/// <param name="Voltage">Volts lost in it, positive along the lamp's own current; negative where another lamp's current runs against this one's.</param>
/// <param name="Share">The same as a share of the source volts.</param>
/// <param name="Current">Current in it, all lamps that share it together.</param>
public sealed record VoltageDropItem(VoltageDropKind Kind, string Part, ElectricPotential Voltage, Ratio Share, ElectricCurrent Current);
