namespace Lighting.Calc.FaultFinding;

/// <summary>The faults the trade knows.</summary>
public enum FaultKind
{
    /// <summary>No fault.</summary>
    None,

    /// <summary>A run on the live side with a poor joint, or open.</summary>
    PoorJoint,

    /// <summary>A run on the earth side with a poor joint, or open: a missing ground.</summary>
    PoorGround,

    /// <summary>A switch contact that has a high resistance, or never closes.</summary>
    PoorContact,

    /// <summary>A switch contact that never opens.</summary>
    ContactNeverOpens,

    /// <summary>A blown fuse, and nothing else.</summary>
    FuseBlown,

    /// <summary>A fuse holder of high resistance.</summary>
    PoorFuseHolder,

    /// <summary>A point on the live side touches the frame; the fuse that feeds it has blown.</summary>
    ShortToFrame,

    /// <summary>A lamp that is open; of several on the same two points, one or all.</summary>
    LampDead,

    /// <summary>A lamp of other volts or watts than the list says.</summary>
    WrongLamp,

    /// <summary>An LED with its two wires exchanged.</summary>
    LedReversed,

    /// <summary>A battery of too few volts even without load.</summary>
    BatteryFlat,

    /// <summary>A battery whose volts fall under load.</summary>
    BatteryWeak,

    /// <summary>A lighting coil of too few volts, magnets or turns failing.</summary>
    CoilWeak,

    /// <summary>A lighting coil that has a poor joint inside, or is open.</summary>
    PoorCoil,
}
