using UnitsNet;

namespace Lighting.Calc;

/// <summary>How far a fitted machine is from one point.</summary>
internal sealed record FitResidual
{
    internal FitResidual(ChargingPoint point, ElectricCurrent fitted, ElectricCurrent residual) =>
        (Point, Fitted, Residual) = (point, fitted, residual);

    /// <summary>The point.</summary>
    public ChargingPoint Point { get; }

    /// <summary>The machine's output at the point's speed.</summary>
    public ElectricCurrent Fitted { get; }

    /// <summary>Point minus machine.</summary>
    public ElectricCurrent Residual { get; }

    /// <summary>Whether it is more than a twentieth of the current the machine tends to: this project's measure of a
    /// fit that does not describe its list.</summary>
    internal bool IsPoor(ElectricCurrent limit) => Math.Abs(Residual.Amperes) > 0.05 * limit.Amperes;
}
