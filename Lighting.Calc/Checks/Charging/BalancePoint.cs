using UnitsNet;

namespace Lighting.Calc;

/// <summary>The balance at one engine speed.</summary>
public sealed record BalancePoint
{
    internal BalancePoint() { }

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed { get; internal init; }

    /// <summary>What the charging system gives at the charging voltage; null where the curve does not show.</summary>
    public ElectricCurrent? Output { get; internal init; }

    /// <summary>Amps into the battery, negative out of it; null where the output is not known. With a regulator, the
    /// most it can send there.</summary>
    public ElectricCurrent? Net { get; internal init; }

    /// <summary>Amps a full battery still gets: the surplus that no regulator keeps out. Null where not known, or where
    /// the regulator is not stated and there is a surplus.</summary>
    public ElectricCurrent? OverchargeCurrent { get; internal init; }

    /// <summary>Heat of the rectifier, its drop times the output; null where the output is not known.</summary>
    public Power? RectifierHeat { get; internal init; }

    /// <summary>Heat a shunt regulator makes of the surplus when the battery is full; null for other
    /// regulators.</summary>
    public Power? ShuntHeat { get; internal init; }
}
