using UnitsNet;

namespace Lighting.Calc;

/// <summary>What the charging system gives at one engine speed.</summary>
/// <param name="Range">Where the speed lies on the curve.</param>
/// <param name="Current">Amps at the charging volts; null where the curve does not tell (never an end value in its place).</param>
public sealed record ChargingOutput(OutputRange Range, ElectricCurrent? Current);
