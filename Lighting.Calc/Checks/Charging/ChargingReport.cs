using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the charging system does for a bike.</summary>
public sealed record ChargingReport
{
    /// <summary>The balance of every setting looked at that has an operating point, in the order of <see cref="SettingEnumeration"/>.</summary>
    public required ImmutableArray<ChargingBalance> Balances { get; init; }

    /// <summary>The setting that wants most: the highest break-even speed, and of several that never break even the largest load. Null when none has an operating point.</summary>
    public required ChargingBalance? Worst { get; init; }

    /// <summary>The setting in which most time of the ride passes, engine running; null without a ride. It need not be among <see cref="Balances"/>.</summary>
    public required ChargingBalance? Typical { get; init; }

    /// <summary>The largest surplus of all settings; null where no output is known or nothing is over.</summary>
    public required ExcessChargingCurrent? Excess { get; init; }

    /// <summary>The ride's balance; null without a ride.</summary>
    public required RideBalance? Ride { get; init; }

    /// <summary>Standing times of the typical and the worst setting, each to a half and to where the engine no longer starts.</summary>
    public required ImmutableArray<BatteryRunTime> Standing { get; init; }

    /// <summary>What is found, the gravest first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }
}
