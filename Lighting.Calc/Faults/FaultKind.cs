namespace Lighting.Calc;

/// <summary>Kinds of fault.</summary>
public enum FaultKind
{
    /// <summary>No fault.</summary>
    None,

    /// <summary>A run on the live side with a joint of high resistance, or open.</summary>
    HighResistanceJoint,

    /// <summary>A run on the earth side with a joint of high resistance, or open: a high-resistance or missing
    /// earth.</summary>
    HighResistanceEarth,

    /// <summary>A switch contact of high resistance, or that never closes.</summary>
    HighResistanceContact,

    /// <summary>A switch contact that never opens.</summary>
    ContactNeverOpens,

    /// <summary>A blown fuse, and nothing else.</summary>
    FuseBlown,

    /// <summary>A fuse holder of high resistance.</summary>
    HighResistanceFuseHolder,

    /// <summary>A point on the live side that touches the frame; the fuse before it has blown.</summary>
    ShortToFrame,

    /// <summary>A lamp that is open; of several on the same two points, one or all.</summary>
    LampDead,

    /// <summary>A lamp of another voltage or power than the list's.</summary>
    WrongLamp,

    /// <summary>An LED with its two wires exchanged.</summary>
    LedReversed,

    /// <summary>A battery of low voltage even without load.</summary>
    BatteryFlat,

    /// <summary>A battery of high internal resistance: its voltage falls under load.</summary>
    BatteryHighResistance,

    /// <summary>A lighting coil of low voltage: weak magnets or shorted turns.</summary>
    LowCoilOutput,

    /// <summary>A lighting coil with a winding or lead of high resistance, or open.</summary>
    CoilWindingFault,

    /// <summary>Something that the list of faults lacks.</summary>
    NotListed,

    /// <summary>Two wires of the live side that touch.</summary>
    ShortBetweenCircuits,

    /// <summary>A wire of the live side that leaks to the frame without blowing its fuse: a partial short, or a drain
    /// on the battery.</summary>
    LeakToFrame,

    /// <summary>Two wires exchanged where they are joined.</summary>
    CrossedWires,

    /// <summary>A flasher that does not close.</summary>
    FlasherDead,

    /// <summary>A lamp holder of high resistance, or without its earth.</summary>
    HighResistanceLampHolder,

    /// <summary>The two filaments of a lamp exchanged.</summary>
    FilamentsExchanged,

    /// <summary>The lead from generator to battery, its plug or charge fuse of high resistance or open.</summary>
    ChargingLeadFault,

    /// <summary>A diode of the rectifier open: part of the output is missing.</summary>
    DiodeOpen,

    /// <summary>A rectifier or regulator that gives nothing; of a dynamo its brushes, field or cut-out.</summary>
    NoGeneratorOutput,

    /// <summary>Magnets of the generator that have lost strength.</summary>
    WeakMagnets,

    /// <summary>A regulator that holds too much: overcharging.</summary>
    RegulatorVoltageHigh,

    /// <summary>A regulator that holds too little.</summary>
    RegulatorVoltageLow,

    /// <summary>A phase of the generator's winding open: part of the output is missing.</summary>
    PhaseOpen,

    /// <summary>A winding of the generator that touches the frame.</summary>
    WindingEarthed,
}
