using UnitsNet;

namespace Lighting.Calc;

/// <summary>How long a battery carries a setting with the engine off.</summary>
/// <remarks>
/// The load is taken at the open-circuit volts of each state of charge, so that lamps draw less as the battery
/// empties: t = ∫ T(I(s)) ds, T by <see cref="PeukertLaw"/>. Below the rated current T is C/I: no more than the rated capacity is counted.
/// </remarks>
public sealed record BatteryRunTime
{
    /// <summary>The setting.</summary>
    public required Setting Setting { get; init; }

    /// <summary>State of charge at the start.</summary>
    public required Ratio From { get; init; }

    /// <summary>State of charge asked about.</summary>
    public required Ratio To { get; init; }

    /// <summary>Average load at the start.</summary>
    public required ElectricCurrent Load { get; init; }

    /// <summary>Whether it is reached.</summary>
    public required BatteryRunTimeOutcome Outcome { get; init; }

    /// <summary>The time, for <see cref="BatteryRunTimeOutcome.Reached"/>; otherwise null.</summary>
    public Duration? Time { get; init; }

    /// <summary>Rested volts of the battery at <see cref="To"/>, by <see cref="LeadAcid"/>.</summary>
    public required ElectricPotential VoltageThere { get; init; }
}
