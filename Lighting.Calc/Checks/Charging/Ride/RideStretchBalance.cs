using UnitsNet;

namespace Lighting.Calc;

/// <summary>The balance of one stretch of a ride. Values that need an output the curve does not tell are null.</summary>
public sealed record RideStretchBalance
{
    /// <summary>The stretch.</summary>
    public required RideStretch Stretch { get; init; }

    /// <summary>Its setting.</summary>
    public required Setting Setting { get; init; }

    /// <summary>Average load, with the field current while the engine runs.</summary>
    public required ElectricCurrent Demand { get; init; }

    /// <summary>What the charging system gives.</summary>
    public required ChargingOutput Output { get; init; }

    /// <summary>Amps into the battery, negative out of it.</summary>
    public required ElectricCurrent? Net { get; init; }

    /// <summary>Charge the battery gains, after the charge efficiency, or loses; as if it had no ends.</summary>
    public required ElectricCharge? NetCharge { get; init; }

    /// <summary>State of charge at the end, 0 to 1; null also without a known capacity or after a stretch that is not known.</summary>
    public required Ratio? StateOfCharge { get; init; }

    /// <summary>Whether the battery became full or flat.</summary>
    public required StateOfChargeLimit Limit { get; init; }

    /// <summary>How far into the stretch that was; null when it was not.</summary>
    public required Duration? LimitAfter { get; init; }
}
