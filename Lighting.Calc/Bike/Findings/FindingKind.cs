namespace Lighting.Calc;

/// <summary>What kind of thing was found. <see cref="Finding.Message"/> has it as a sentence.</summary>
public enum FindingKind
{
    // The lists.

    /// <summary>No runs are listed, so that wires and voltage drop are not included.</summary>
    NoRuns,

    /// <summary>Points of a bike without runs are ignored.</summary>
    PointsIgnored,

    /// <summary>Joints are listed without a resistance. Value: the typical resistance of one; figures: how many there
    /// are; parts: their runs.</summary>
    JointsAssumed,

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

    /// <summary>Too large a share of the supply voltage is dropped before a lamp. Value: the share; limit: the share
    /// allowed.</summary>
    VoltageDropTooLarge,

    /// <summary>A filament has too high a voltage. Value: the voltage; limit: the highest that it stands. Detail: what
    /// that is.</summary>
    LampOvervoltage,

    // Solving and wiring.

    /// <summary>The battery's terminals are joined without any resistance.</summary>
    DeadShort,

    /// <summary>No operating point was found. Detail: what the solver tried.</summary>
    NoOperatingPoint,

    /// <summary>A lamp is dark where its <c>lit when</c> says lit. Detail: why.</summary>
    LampDark,

    /// <summary>The current of a lamp also flows through another lamp.</summary>
    LampInSeries,

    /// <summary>A lamp is fed where its <c>lit when</c> says dark. Detail: the path.</summary>
    LampFedUnintended,

    /// <summary>Lamps are fed without a fuse. Detail: the path to the first.</summary>
    LampUnfused,

    /// <summary>Runs that feed something have no fuse.</summary>
    RunUnfused,

    /// <summary>Runs from the battery to the first fuse, which no fuse can protect.</summary>
    BatteryLead,

    /// <summary>Neither side of a fuse is connected to the battery. Detail: the terminal.</summary>
    FuseNotConnected,

    /// <summary>A fuse feeds no load.</summary>
    FuseFeedsNothing,

    /// <summary>A switch named in a condition has no contact.</summary>
    SwitchWithoutContact,

    /// <summary>No contact is closed in a position. Parts: the positions.</summary>
    PositionWithoutContact,

    /// <summary>No <c>lit when</c> names a position. Parts: the positions.</summary>
    PositionNotNamed,

    /// <summary>Points with one connection only.</summary>
    PointWithOneConnection,

    // Charging.

    /// <summary>No balance: the harness has no operating point. Detail: why.</summary>
    ChargingNotSolved,

    /// <summary>The loads draw more than the charging output at any known speed. Value: the average load; detail: which
    /// setting it is.</summary>
    LoadsExceedOutput,

    /// <summary>The battery charges from a speed. Value: that speed; figures: the average load; detail: which setting
    /// it is.</summary>
    BreakEvenReached,

    /// <summary>The battery charges at the slowest speed of the list already. Value: that speed; figures: the average
    /// load; detail: which setting it is.</summary>
    BreakEvenBelowList,

    /// <summary>The break-even speed is unknown: the curves have no speeds in common. Detail: which setting it
    /// is.</summary>
    BreakEvenUnknown,

    /// <summary>The output falls below the loads again. Value: the speed; detail: which setting it is.</summary>
    OutputFallsBelowLoads,

    /// <summary>Surplus output that a regulator must keep out of a full battery; none is stated. Value: the surplus;
    /// limit: what a full battery takes; figures: the speed.</summary>
    SurplusOutput,

    /// <summary>Surplus output into a full battery without a regulator. Value: the surplus; limit: what a full battery
    /// takes; figures: the speed.</summary>
    Overcharge,

    /// <summary>Surplus beyond a shunt regulator's limit. Value: what is left to the battery; limit: what a full
    /// battery takes; figures: the speed, the regulator's limit.</summary>
    ShuntLimitExceeded,

    /// <summary>No ride is listed.</summary>
    NoRideList,

    /// <summary>The output on a segment of the ride is unknown. Value: the speed; detail: why.</summary>
    RideOutputUnknown,

    /// <summary>The battery is flat before a segment of the ride ends. Value: the time into it.</summary>
    BatteryFlat,

    /// <summary>The battery is full before a segment of the ride ends. Value: the time into it.</summary>
    BatteryFull,

    /// <summary>Charge the battery gains or loses over the ride. Value: the charge; figures: the duration, and the
    /// state of charge at the end where it is known.</summary>
    RideCharge,

    /// <summary>Battery run time with the engine off. Value: the time; figures: the load, the states of charge at start
    /// and end, the voltage at rest at the end.</summary>
    BatteryRunTime,

    /// <summary>The battery's capacity is not stated.</summary>
    CapacityNotStated,

    /// <summary>The lamps are fed by the lighting coil: a balance would need a battery and a rectifier.</summary>
    NoBatteryToBalance,

    /// <summary>The listed output falls as the speed rises.</summary>
    OutputFalls,

    /// <summary>The charging list has one point. Value: its speed.</summary>
    OneChargingPoint,

    /// <summary>A fit to the charging list. Value: its largest deviation; figures: the current it tends to, its corner
    /// or cut-in speed, the speed of the deviation; detail: what was fitted.</summary>
    ChargingFit,

    /// <summary>The charging voltage does not exceed that of a full battery. Value: the voltage; limit: the
    /// battery's.</summary>
    ChargingVoltageTooLow,

    /// <summary>The charging voltage is below the usual window. Value: the voltage; limit: the window's lower end;
    /// figures: its upper end.</summary>
    ChargingVoltageLow,

    /// <summary>The charging voltage is above the usual window. Value: the voltage; limit: the window's upper end;
    /// figures: its lower end.</summary>
    ChargingVoltageHigh,

    /// <summary>The battery voltage is that of a battery not fully charged. Value: the voltage; figures: that state of
    /// charge, the one ride and run time start from.</summary>
    BatteryNotFull,

    // AC direct lighting.

    /// <summary>LEDs on alternating current.</summary>
    LedOnAlternatingCurrent,

    /// <summary>A filament has too high a voltage at an engine speed. Value: the voltage; limit: its rated voltage;
    /// figures: the speed.</summary>
    LampBurnsOut,

    /// <summary>A filament's life is shortened at an engine speed. Value: the voltage; limit: its rated voltage;
    /// figures: the speed, the share of its rated life.</summary>
    LampLifeShortened,

    /// <summary>A lamp gives half its light from a speed. Value: the speed.</summary>
    HalfLight,

    /// <summary>A lamp gives less than half its light at every listed speed. Value: the fastest.</summary>
    HalfLightNotReached,

    /// <summary>The failure of one lamp burns out another. Value: voltage of the other; limit: its voltage before;
    /// figures: the speed, and resistance and power of the equivalent resistor where there is one; parts: the other
    /// lamp.</summary>
    FailureBurnsOutAnother,

    /// <summary>The failure of one lamp shortens the life of another; figures as of
    /// <see cref="FailureBurnsOutAnother"/>.</summary>
    FailureShortensLife,

    /// <summary>The current a regulator across the lighting coil takes. Value: the current; limit: the voltage it
    /// holds; figures: the speed, the power.</summary>
    RegulatorAcrossCoil,

    /// <summary>The lighting coil fitted to the list. Value: the largest deviation; figures: open-circuit voltage and
    /// reactance for 1000 rpm, the speed of the deviation.</summary>
    CoilFit,

    // Swaps.

    /// <summary>The load of an electronic flasher falls. Value: the load; limit: the load it is rated for; parts: the
    /// settings.</summary>
    ElectronicFlasherLoad,

    /// <summary>A thermal flasher stops at its load. Value: the load; limit: the load it is rated for; figures: the
    /// share below which it stops, the heat of its strip, the flash rates required; parts: the settings.</summary>
    FlasherStops,

    /// <summary>A thermal flasher may change its rate at its load; figures as of <see cref="FlasherStops"/>.</summary>
    FlasherRateChanges,

    /// <summary>A flasher of unstated kind stops if it is thermal; figures as of <see cref="FlasherStops"/>.</summary>
    UnstatedFlasherStops,

    /// <summary>A flasher of unstated kind may change its rate if it is thermal; figures as of
    /// <see cref="FlasherStops"/>.</summary>
    UnstatedFlasherRateChanges,

    /// <summary>Load resistors for lamps. Value: the resistance; figures: the preferred value, power at the voltage of
    /// comparison, that voltage, power lit at the highest voltage, that voltage, power while flashing, and the rating
    /// to fit where there is one; parts: the lamps.</summary>
    LoadResistors,

    /// <summary>A lamp glows in a setting in which it should be dark. Value: its voltage; figures: its current, its
    /// light.</summary>
    SneakFeed,

    /// <summary>The same through another lamp, which two diodes remedy. Parts: that lamp, its feed and its
    /// return.</summary>
    SneakFeedThroughLamp,

    /// <summary>The same through another lamp, which two diodes do not remedy. Parts: that lamp, its feed and its
    /// return.</summary>
    SneakFeedThroughMore,

    /// <summary>A lamp that was lit is dark after the swap. Value: its voltage.</summary>
    DarkAfterSwap,

    /// <summary>Surplus output after the swap; no regulator is stated. Value: after; limit: before; figures: the speed,
    /// and what a full battery takes where known.</summary>
    SurplusAfterSwap,

    /// <summary>Overcharge after the swap without a regulator; figures as of <see cref="SurplusAfterSwap"/>.</summary>
    OverchargeAfterSwap,

    /// <summary>Surplus beyond the shunt regulator's limit after the swap; figures as of
    /// <see cref="SurplusAfterSwap"/>.</summary>
    ShuntLimitExceededAfterSwap,

    /// <summary>The lighting coil's voltage after the swap. Value: after; limit: before; figures: the speed.</summary>
    CoilVoltageAfterSwap,

    /// <summary>A regulator or a resistor across the lighting coil holds its voltage. Value: current of the regulator;
    /// limit: the voltage it holds; figures: the speed, the regulator's power, then of the resistor its resistance,
    /// largest power, highest voltage, voltage at the slowest speed, that before the swap, that speed, and its rating
    /// where there is one.</summary>
    CoilOvervoltageRemedy,

    /// <summary>Only a regulator does. Value: its current; limit: the voltage it holds; figures: the speed, its power,
    /// the resistance at which a resistor takes the lamps' voltage, what is left, the voltage above which more leaves
    /// it.</summary>
    CoilNeedsRegulator,

    /// <summary>LEDs on a bike with positive earth.</summary>
    LedPolarity,

    /// <summary>A lamp gives less light after the swap. Value: after; limit: before; figures: the share.</summary>
    LessLight,

    /// <summary>Whether lamps get brighter or dimmer is unknown.</summary>
    LightUnknown,

    /// <summary>Lamps whose approval may end with an LED.</summary>
    RoadApproval,

    /// <summary>A smaller fuse would do after the swap. Value: largest current after; limit: before; figures: the
    /// rating that would do.</summary>
    SmallerFuse,

    /// <summary>LEDs at more than their maximum voltage. Value: the voltage; limit: the maximum; detail: what gives
    /// it.</summary>
    LedOvervoltage,

    /// <summary>LED resistors pass more than their rated current. Value: the voltage; figures: the ratios; detail: what
    /// gives it.</summary>
    LedCurrentHigh,

    /// <summary>The maximum voltage of LEDs is not listed. Value: the voltage; detail: what gives it.</summary>
    LedMaximumUnknown,

    /// <summary>One filament of two is replaced. Parts: the other; detail: the lamp.</summary>
    OneFilamentOfTwo,

    // Fault finding.

    /// <summary>A reading that no fault and no pair of faults explains. Detail: the reading and the value
    /// expected.</summary>
    ReadingNotExplained,

    /// <summary>Readings of one place that contradict each other. Parts: the readings.</summary>
    ContradictoryReadings,

    /// <summary>A voltage above the battery voltage, engine off. Value: the voltage; limit: the battery
    /// voltage.</summary>
    ReadingAboveBattery,

    /// <summary>A voltage above the supply voltage of the test. Value: the voltage; limit: the supply
    /// voltage.</summary>
    ReadingAboveSupply,

    /// <summary>A voltage above the open-circuit voltage of the lighting coil. Value: the voltage; limit: that of the
    /// coil; figure: the engine speed.</summary>
    ReadingAboveCoil,

    /// <summary>A negative voltage on a bike with negative earth, or on a lighting coil.</summary>
    ReadingBelowZero,

    /// <summary>A negative voltage on a bike with positive earth.</summary>
    ReadingFromPositiveFrame,

    /// <summary>A negative resistance.</summary>
    ResistanceBelowZero,

    /// <summary>A reading of another quantity than the instrument shows.</summary>
    ReadingOfOtherInstrument,

    /// <summary>A reading of a point, part or switch position that the bike does not have. Parts: similar
    /// names.</summary>
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

    /// <summary>Connection of meter and test lamp on a battery. Value: the supply voltage of the test, if
    /// held.</summary>
    MeterOnBattery,

    /// <summary>A short to the frame is not considered, since there is no fuse.</summary>
    ShortNotConsidered,

    /// <summary>Connection of meter and test lamp on positive earth.</summary>
    MeterOnPositiveEarth,

    /// <summary>Readings on positive earth that fit where they were taken from the frame, without their sign. Detail:
    /// what they then show.</summary>
    ReadingsFromFrame,

    /// <summary>Connection of meter and test lamp on a lighting coil. Value: the engine speed; figures: tolerances of
    /// speed and coil output.</summary>
    MeterOnCoil,

    /// <summary>The lighting coil is fitted to the charging list. Value: its open-circuit voltage.</summary>
    CoilFitted,

    /// <summary>A lamp unplugged at high engine speed raises the voltage of the others.</summary>
    UnpluggedAtSpeed,

    /// <summary>The engine speed is outside the charging list. Value: the speed; figures: the lowest and highest speed
    /// of the list.</summary>
    SpeedOutsideCharging,

    /// <summary>Connection of an ohmmeter on a bike with a battery.</summary>
    OhmmeterOffBattery,

    /// <summary>Connection of an ohmmeter on a bike with a lighting coil.</summary>
    OhmmeterOffCoil,

    // Fuses and their wires.

    /// <summary>A fuse's continuous load is larger than its usable share of the rating. Value: the load; limit: the
    /// usable current.</summary>
    FuseContinuousLoadTooLarge,

    /// <summary>The peak, momentary loads included, is larger than the fuse is published to hold. Value: the peak;
    /// limit: the rating. Detail: what is published.</summary>
    FusePeakTooLarge,

    /// <summary>The peak is larger than the rating, but the fuse is published to hold it. Value: the peak; limit: the
    /// rating. Detail: what is published.</summary>
    FusePeakAboveRating,

    /// <summary>The inrush current may open the fuse. Detail: the figures.</summary>
    FuseInrushTooLarge,

    /// <summary>The inrush of indicators, stop lamps and other lamps that are switched often ages the fuse. Value: the
    /// share of its melting energy each time; limit: the share printed for 100,000 times. Detail: how often it is shown
    /// to withstand that.</summary>
    FuseAgesByInrush,

    /// <summary>Wires are rated below their fuse. Value: the lowest rating; limit: the fuse's; parts: the runs. Detail:
    /// the weakest wire and its basis.</summary>
    WiresRatedBelowFuse,

    /// <summary>Wires without a published rating, so that the fuse is not shown to protect them. Parts: the runs.
    /// Detail: why.</summary>
    WiresUnratedBehindFuse,

    /// <summary>Wires whose kind of cable is not stated are rated below their fuse if they are ordinary cable. Value:
    /// the lowest such rating; limit: the fuse's; parts: the runs.</summary>
    CableKindNeeded,

    /// <summary>Wires are rated below their fuse when every wire of their bundle is loaded. Value: the lowest such
    /// rating; limit: the fuse's; parts: the runs.</summary>
    BundledWiresBelowFuse,

    /// <summary>A fuse is bypassed: both sides are joined to the battery without one.</summary>
    FuseBypassed,

    /// <summary>Dead shorts that do not clear. Value: the prospective current of the first; parts: the runs. Detail:
    /// why.</summary>
    ShortDoesNotClear,

    /// <summary>Dead shorts that no published figure shows to clear. Parts: the runs. Detail: what would.</summary>
    ShortNotShownToClear,

    /// <summary>A run carries more than its rating. Value: the current; limit: the rating. Detail: the basis of the
    /// rating.</summary>
    RunOverloaded,

    /// <summary>A run is fed through two fuses. Parts: the run, the other fuse.</summary>
    RunFedByTwoFuses,

    /// <summary>No setting joins a fuse to the battery.</summary>
    FuseNotJudged,

    /// <summary>The wires behind a fuse are not listed.</summary>
    FuseWiresNotListed,

    /// <summary>A glass fuse marked with its blowing current. Value: the marking; limit: the continuous
    /// rating.</summary>
    FuseMarkedWithBlowingCurrent,

    /// <summary>The resistance of a fuse is neither listed nor published.</summary>
    FuseResistanceUnknown,

    /// <summary>No lamp defines the return path of a short. Parts: the runs.</summary>
    ShortReturnUnknown,

    /// <summary>The inrush is not judged, since no minimum opening times are published. Value: the peak. Detail: the
    /// style of fuse.</summary>
    InrushNotJudged,

    /// <summary>A fuse carries no current.</summary>
    FuseWithoutCurrent,

    /// <summary>A fuse is judged by an unusual share of its rating. Value: the share.</summary>
    FuseLoadFactorUnusual,

    /// <summary>Readings of one place from which more others differ, left out. Parts: the readings left out.</summary>
    ReadingOutvoted,

    /// <summary>A name that fits several lamps. Parts: the lamps.</summary>
    SymptomLampAmbiguous,

    /// <summary>A text that is no reading. Detail: what was expected.</summary>
    ReadingTextUnknown,

    // Regulators.

    /// <summary>A shunt regulator or a Zener diode makes more heat than it is rated for. Value: the heat; limit: its
    /// rating; figures: speed, current; setting.</summary>
    RegulatorOverloaded,

    /// <summary>Power that the lamps no longer take is heat of the shunt regulator. Value: its heat after; limit:
    /// before; figures: speed, and its rating where listed; setting.</summary>
    RegulatorHeatAfterSwap,

    // Of the question.

    /// <summary>Only some settings are judged. Subject: the condition that holds in them.</summary>
    OnlySomeSettings,

    // Sizes and fuse plans.

    /// <summary>No listed wire keeps the drop of a lamp within its limit. Value: the drop with the sizes chosen; limit:
    /// the allowed one; setting. Detail: what would keep it.</summary>
    DropLimitNotMet,

    /// <summary>Wires are rated as in free air, since their kind of cable is not stated, and would be rated below their
    /// fuse or load as ordinary cable. Parts: the runs.</summary>
    CableKindAssumed,

    /// <summary>A fuse plan takes wires whose kind of cable is not stated as ordinary cable, the lowest rated. Parts:
    /// the runs; none where it is every run.</summary>
    PlannedAsOrdinaryCable,

    // Relays.

    /// <summary>The voltage at the coil does not pull the relay in. Value: that voltage with the contacts at rest;
    /// limit: the pull-in voltage; setting.</summary>
    RelayDoesNotPullIn,

    /// <summary>The relay pulls in and drops out again and again. Value: the voltage at its coil; limit: what it needs;
    /// setting. Detail: why.</summary>
    RelayChatters,

    /// <summary>The coil has voltage enough to pull in, but through another load: it is taken at rest. Value: the
    /// voltage; limit: the pull-in voltage; setting.</summary>
    RelayFedThroughLoad,

    /// <summary>No setting feeds the coil.</summary>
    RelayNeverIn,

    /// <summary>Where the meter goes with the engine running. Value: engine speed. Figures: its tolerance.</summary>
    MeterWithEngineRunning,

    /// <summary>The duty of momentary loads is not listed and assumed. Value: the share. Parts: the loads.</summary>
    DutyAssumed,

    /// <summary>Heat of a regulator whose rating is not listed. Value: the heat. Figures: speed, current. Detail: what
    /// kind of regulator.</summary>
    RegulatorHeatUnrated,

    /// <summary>The lamp loses more than its limit while horn, brake or another momentary switch is worked, and not
    /// otherwise. Value: drop; limit; setting. Parts: further lamps; figures: theirs.</summary>
    MomentaryVoltageDrop,

    /// <summary>Lamps claim settings and runs are listed, but no switch contacts. Parts: the switches that are
    /// named.</summary>
    NoSwitchList,

    /// <summary>The lesser of two filaments is replaced by the brighter function of an LED. Detail: its code.</summary>
    StopFunctionInTail,

    /// <summary>Contacts of switches list no resistance and are taken as none. Parts: the switches.</summary>
    ContactsWithoutResistance,

    /// <summary>The voltage at the battery overcharges it. Value: the voltage; limit; setting. Figures: engine
    /// speed.</summary>
    BatteryOvervoltage,

    // Another system voltage.

    /// <summary>The charging list is taken as that of the same winding at another voltage. Value: how many times the
    /// speed for the same current; figures: the voltages before and after.</summary>
    GeneratorConverted,

    /// <summary>The battery is taken as more of the same cells. Value: the system voltage; figures: its capacity, where
    /// listed.</summary>
    BatteryConverted,

    /// <summary>Lamps of which no counterpart for the system voltage is listed, taken as of the same watts. Value: the
    /// system voltage. Parts: the lamps.</summary>
    NoCounterpartListed,

    /// <summary>Loads other than lamps, taken as of the same watts at another system voltage. Value: that voltage.
    /// Parts: the loads.</summary>
    LoadsConverted,
}
