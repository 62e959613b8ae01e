using UnitsNet;

namespace Lighting.Calc;

/// <summary>How far a fitted machine is from one point.</summary>
/// <param name="Point">The point.</param>
/// <param name="Residual">Point minus machine.</param>
internal sealed record FitResidual(ChargingPoint Point, ElectricCurrent Residual)
{
    /// <summary>Whether it is more than a twentieth of the current the machine tends to: this project's measure of a
    /// fit that does not describe its list.</summary>
    internal bool IsPoor(ElectricCurrent limit) => Math.Abs(Residual.Amperes) > 0.05 * limit.Amperes;
}
