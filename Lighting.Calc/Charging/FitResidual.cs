using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.Charging;

/// <summary>How far a fitted machine is from one point.</summary>
/// <param name="Point">The point.</param>
/// <param name="Fitted">The machine's output at the point's speed.</param>
/// <param name="Residual">Point minus machine.</param>
public sealed record FitResidual(ChargingPoint Point, ElectricCurrent Fitted, ElectricCurrent Residual);
