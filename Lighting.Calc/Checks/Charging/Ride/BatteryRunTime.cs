using UnitsNet;

namespace Lighting.Calc;

/// <summary>How long a battery carries a setting with the engine off.</summary>
/// <remarks>
/// The load is taken at the open-circuit voltage of each state of charge, so that lamps draw less as the battery
/// empties: t = ∫ T(I(s)) ds, T by Peukert's law (source: W. Peukert, Elektrotechnische Zeitschrift 18, 1897, 287).
/// Below the rated current T is C/I: no more than the rated capacity is counted.
/// </remarks>
public sealed record BatteryRunTime
{
    internal BatteryRunTime() { }

    /// <summary>The setting.</summary>
    public Setting Setting { get; internal init; } = null!;

    /// <summary>State of charge at the start.</summary>
    public Ratio From { get; internal init; }

    /// <summary>State of charge asked about.</summary>
    public Ratio To { get; internal init; }

    /// <summary>Average load at the start.</summary>
    public ElectricCurrent Load { get; internal init; }

    /// <summary>Whether it is reached.</summary>
    internal BatteryRunTimeOutcome Outcome { get; init; }

    /// <summary>The time; null where there is no load or no known capacity, or the battery is there already.</summary>
    public Duration? Time { get; internal init; }

    /// <summary>Rested voltage of the battery at <see cref="To"/>.</summary>
    public ElectricPotential VoltageThere { get; internal init; }
}
