using UnitsNet;

namespace Lighting.Calc;

/// <summary>The balance at one engine speed.</summary>
public sealed record BalancePoint
{
    /// <summary>Engine speed.</summary>
    public required RotationalSpeed Speed { get; init; }

    /// <summary>What the charging system gives; without a current where the curve does not tell.</summary>
    public required ChargingOutput Output { get; init; }

    /// <summary>Amps into the battery, negative out of it; null where the output is not known. With a regulator, the most it can send there.</summary>
    public required ElectricCurrent? Net { get; init; }

    /// <summary>Amps a full battery still gets: the surplus that no regulator keeps out. Null where not known, or where the regulator is not stated and there is a surplus.</summary>
    public required ElectricCurrent? OverchargeCurrent { get; init; }

    /// <summary>Heat of the rectifier, its drop times the output; null where the output is not known.</summary>
    public required Power? RectifierHeat { get; init; }

    /// <summary>Heat a shunt regulator makes of the surplus when the battery is full; null for other regulators.</summary>
    public required Power? ShuntHeat { get; init; }
}
