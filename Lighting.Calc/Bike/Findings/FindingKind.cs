namespace Lighting.Calc;

/// <summary>What kind of thing was found. <see cref="FindingWords"/> has the sentence of each kind.</summary>
public enum FindingKind
{
    /// <summary>Said by its message alone.</summary>
    Other,

    // The lists.

    /// <summary>No runs are listed, so that wires and voltage drop are not included.</summary>
    NoRuns,

    /// <summary>Points of a bike without runs are ignored.</summary>
    PointsIgnored,

    /// <summary>No <c>lit when</c> is listed, so that every lamp counts as on.</summary>
    NoLitWhen,

    /// <summary>No fuse is listed.</summary>
    NoFuse,

    /// <summary>No charging curve is listed.</summary>
    NoChargingList,

    // Lamps.

    /// <summary>The driver of an LED drops out: the voltage is too low to hold its power. Value: its voltage.</summary>
    DriverDropsOut,

    /// <summary>The driver of an LED may drop out. Value: its voltage while lit.</summary>
    DriverMayDropOut,

    /// <summary>Too large a share of the supply voltage is dropped before a lamp. Value: the share; limit: the share allowed.</summary>
    VoltageDropTooLarge,

    /// <summary>A filament has too high a voltage. Value: the voltage; limit: its rated voltage.</summary>
    LampOvervoltage,

    // Fault finding.

    /// <summary>A reading that no fault and no pair of faults explains. Detail: the reading and the value expected.</summary>
    ReadingNotExplained,

    /// <summary>Readings of one place that contradict each other. Parts: the readings.</summary>
    ContradictoryReadings,

    /// <summary>A voltage above the battery voltage, engine off. Value: the voltage; limit: the battery voltage.</summary>
    ReadingAboveBattery,

    /// <summary>A voltage above the supply voltage of the test. Value: the voltage; limit: the supply voltage.</summary>
    ReadingAboveSupply,

    /// <summary>A voltage above the open-circuit voltage of the lighting coil. Value: the voltage; limit: that of the coil; figure: the engine speed.</summary>
    ReadingAboveCoil,

    /// <summary>A negative voltage on a bike with negative earth, or on a lighting coil.</summary>
    ReadingBelowZero,

    /// <summary>A negative voltage on a bike with positive earth.</summary>
    ReadingFromPositiveFrame,

    /// <summary>A negative resistance.</summary>
    ResistanceBelowZero,

    /// <summary>A reading of another quantity than the instrument shows.</summary>
    ReadingOfOtherInstrument,

    /// <summary>A reading of a point, part or switch position that the bike does not have. Parts: similar names.</summary>
    ReadingPlaceUnknown,

    /// <summary>The setting of a symptom is not a condition. Detail: what was expected.</summary>
    SymptomSettingUnknown,

    /// <summary>A symptom without an observation.</summary>
    SymptomMissing,

    /// <summary>An observation that does not end in dark, dim, good or bright.</summary>
    SymptomLookUnknown,

    /// <summary>An observation of a lamp that the bike does not have. Parts: its lamps.</summary>
    SymptomLampUnknown,

    /// <summary>An observation of a lamp that the bike does not have. Parts: similar names.</summary>
    SymptomLampMisspelt,

    /// <summary>Connection of meter and test lamp on a battery. Value: the supply voltage of the test, if held.</summary>
    MeterOnBattery,

    /// <summary>A short to the frame is not considered, since there is no fuse.</summary>
    ShortNotConsidered,

    /// <summary>Connection of meter and test lamp on positive earth.</summary>
    MeterOnPositiveEarth,

    /// <summary>Connection of meter and test lamp on a lighting coil. Value: the engine speed; figures: tolerances of speed and coil output.</summary>
    MeterOnCoil,

    /// <summary>The lighting coil is fitted to the charging list. Value: its open-circuit voltage.</summary>
    CoilFitted,

    /// <summary>A lamp unplugged at high engine speed raises the voltage of the others.</summary>
    UnpluggedAtSpeed,

    /// <summary>The engine speed is outside the charging list. Value: the speed; figures: the lowest and highest speed of the list.</summary>
    SpeedOutsideCharging,

    /// <summary>Connection of an ohmmeter on a bike with a battery.</summary>
    OhmmeterOffBattery,

    /// <summary>Connection of an ohmmeter on a bike with a lighting coil.</summary>
    OhmmeterOffCoil,
}
