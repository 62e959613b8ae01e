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

    // Fuses and their wires.

    /// <summary>A fuse's continuous load is larger than its usable share of the rating. Value: the load; limit: the usable current.</summary>
    FuseContinuousLoadTooLarge,

    /// <summary>The peak, momentary loads included, is larger than the fuse is published to hold. Value: the peak; limit: the rating. Detail: what is published.</summary>
    FusePeakTooLarge,

    /// <summary>The peak is larger than the rating, but the fuse is published to hold it. Value: the peak; limit: the rating. Detail: what is published.</summary>
    FusePeakAboveRating,

    /// <summary>The inrush current may open the fuse. Detail: the figures.</summary>
    FuseInrushTooLarge,

    /// <summary>Wires are rated below their fuse. Value: the lowest rating; limit: the fuse's; parts: the runs. Detail: the weakest wire and its basis.</summary>
    WiresRatedBelowFuse,

    /// <summary>Wires without a published rating, so that the fuse is not shown to protect them. Parts: the runs. Detail: why.</summary>
    WiresUnratedBehindFuse,

    /// <summary>Wires whose kind of cable is not stated are rated below their fuse if they are ordinary cable. Value: the lowest such rating; limit: the fuse's; parts: the runs.</summary>
    CableKindNeeded,

    /// <summary>Wires are rated below their fuse when every wire of their bundle is loaded. Value: the lowest such rating; limit: the fuse's; parts: the runs.</summary>
    BundledWiresBelowFuse,

    /// <summary>A fuse is bypassed: both sides are joined to the battery without one.</summary>
    FuseBypassed,

    /// <summary>Dead shorts that do not clear. Value: the prospective current of the first; parts: the runs. Detail: why.</summary>
    ShortDoesNotClear,

    /// <summary>Dead shorts that no published figure shows to clear. Parts: the runs. Detail: what would.</summary>
    ShortNotShownToClear,
}
