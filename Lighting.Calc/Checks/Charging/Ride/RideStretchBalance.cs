using UnitsNet;

namespace Lighting.Calc;

/// <summary>The balance of one stretch of a ride. Values that need an output the curve does not show are
/// null.</summary>
public sealed record RideStretchBalance
{
    internal RideStretchBalance() { }

    /// <summary>The stretch.</summary>
    public RideStretch Stretch { get; internal init; } = null!;

    /// <summary>Average load, with the field current while the engine runs.</summary>
    public ElectricCurrent Demand { get; internal init; }

    /// <summary>What the charging system gives at the charging voltage; null where the curve does not show.</summary>
    public ElectricCurrent? Output { get; internal init; }

    /// <summary>Where the speed lies on the curve.</summary>
    internal OutputRange Range { get; init; }

    /// <summary>Amps into the battery, negative out of it.</summary>
    public ElectricCurrent? Net { get; internal init; }

    /// <summary>Charge the battery gains, after the charge efficiency, or loses; as if it had no ends.</summary>
    public ElectricCharge? NetCharge { get; internal init; }

    /// <summary>State of charge at the end, 0 to 1; null also without a known capacity or after a stretch that is not
    /// known.</summary>
    public Ratio? StateOfCharge { get; internal init; }

    /// <summary>Whether the battery became full or flat.</summary>
    internal StateOfChargeLimit Limit { get; init; }

    /// <summary>How far into the stretch that was; null when it was not.</summary>
    public Duration? LimitAfter { get; internal init; }
}
