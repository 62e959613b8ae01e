namespace Lighting.Calc;

/// <summary>Whether a battery under a standing load reaches a state of charge.</summary>
internal enum BatteryRunTimeOutcome
{
    /// <summary>It does, after the time given.</summary>
    Reached,

    /// <summary>It is there, or lower, from the start.</summary>
    AlreadyThere,

    /// <summary>Nothing draws a milliamp, at the start or once the voltage has fallen: self-discharge decides, which is
    /// not computed.</summary>
    NoLoad,

    /// <summary>The bike's battery capacity is not known.</summary>
    CapacityNotKnown,
}
