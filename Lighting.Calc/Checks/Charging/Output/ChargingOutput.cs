using UnitsNet;

namespace Lighting.Calc;

/// <summary>What the charging system gives at one engine speed.</summary>
/// <param name="Range">Where the speed lies on the curve.</param>
/// <param name="Current">Amps at the charging voltage; null where the curve does not show (never an end value in its
/// place).</param>
internal sealed record ChargingOutput(OutputRange Range, ElectricCurrent? Current);
