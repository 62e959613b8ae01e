namespace Lighting.Calc;

/// <summary>How the output is found from the points of the charging list.</summary>
public enum ChargingModel
{
    /// <summary>Monotone cubic interpolation between the points.</summary>
    Curve,

    /// <summary>A machine fitted to the points, each winding by itself, without a cut-in: an EMF
    /// behind resistance and reactance.</summary>
    FittedMachine,

    /// <summary>A coil fitted to the points, each winding by itself, with a cut-in at the speed at which its EMF passes
    /// the charging voltage and the bridge.</summary>
    FittedCoil,
}
