using UnitsNet;

namespace Lighting.Calc.Network;

/// <summary>One line of a lamp's ledger: a part and the volts it takes.</summary>
/// <param name="Kind">What sort of part.</param>
/// <param name="Part">Its name.</param>
/// <param name="Voltage">Volts lost in it; negative where another lamp's current runs against this one's.</param>
/// <param name="Share">The same as a share of the source volts.</param>
/// <param name="Current">Current in it, all lamps that share it together.</param>
public sealed record DropEntry(DropKind Kind, string Part, ElectricPotential Voltage, Ratio Share, ElectricCurrent Current);
