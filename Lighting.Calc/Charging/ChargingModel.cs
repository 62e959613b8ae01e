namespace Lighting.Calc.Charging;

/// <summary>How the output is found from the points of the charging list.</summary>
public enum ChargingModel
{
    /// <summary>Monotone interpolation between the points: <see cref="ChargingCurve"/>.</summary>
    Curve,

    /// <summary>A machine fitted to the points, each winding by itself: <see cref="PermanentMagnetMachine"/>.</summary>
    FittedMachine,
}
