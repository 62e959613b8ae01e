using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What the charging system does for a bike.</summary>
public sealed class ChargingReport
{
    internal ChargingReport() { }

    /// <summary>The balance of every setting looked at that has an operating point, in the order of
    /// <see cref="SettingEnumeration"/>.</summary>
    public ImmutableArray<ChargingBalance> Balances { get; internal init; }

    /// <summary>The setting that wants most: the highest break-even speed, and of several that never break even the
    /// largest load. Null when none has an operating point.</summary>
    public ChargingBalance? Worst { get; internal init; }

    /// <summary>The setting in which most time of the ride passes, engine running; null without a ride. It need not be
    /// among <see cref="Balances"/>.</summary>
    public ChargingBalance? Typical { get; internal init; }

    /// <summary>The largest surplus of all settings; null where no output is known or nothing is over.</summary>
    internal ExcessChargingCurrent? Excess { get; init; }

    /// <summary>The ride's balance; null without a ride.</summary>
    public RideBalance? Ride { get; internal init; }

    /// <summary>Standing times of the typical and the worst setting, each to a half and to where the engine no longer
    /// starts.</summary>
    public ImmutableArray<BatteryRunTime> Standing { get; internal init; }

    /// <summary>What is found, the gravest first.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; }
}
