using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a lamp would gain if one part lost nothing: the most that mending it can give.</summary>
/// <param name="Entry">The part as it is.</param>
/// <param name="Voltage">Volts the lamp would gain.</param>
/// <param name="Light">Light it would gain, as a share of its light at the reference volts; null for a load that gives none.</param>
public sealed record RepairBenefit(VoltageDropItem Entry, ElectricPotential Voltage, Ratio? Light);
