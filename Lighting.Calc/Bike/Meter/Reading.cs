using UnitsNet;

namespace Lighting.Calc;

/// <summary>One measurement or observation on the bike: one row of <c>readings.csv</c>. Exactly one of the five results
/// is set.</summary>
public sealed record Reading
{
    /// <summary>The <see cref="Point"/> of a look at every lamp; with it <see cref="Seen"/> is normal where each lamp
    /// is lit or dark as it should be.</summary>
    public const string EveryLamp = "every lamp";

    /// <summary>The switches held while it was taken; a switch that is not named is off.</summary>
    public required Condition When { get; init; }

    /// <summary>The point probed, the fuse replaced by an ammeter, or the lamp or run looked at.</summary>
    public required string Point { get; init; }

    /// <summary>Whether it is taken on a lead of the unplugged generator: <c>generator 1</c> to <c>generator
    /// 3</c>.</summary>
    public bool IsOnGenerator => BenchPoints.LeadOf(Point) > 0;

    /// <summary>The second point, for the black lead of a meter or an ohmmeter; null for battery minus, or for a part
    /// whose two ends are meant.</summary>
    public string? To { get; init; }

    /// <summary>The fused jumper that was on while it was taken; null for none.</summary>
    public JumperLead? Jumper { get; init; }

    /// <summary>The run whose connector was apart, or the lamp or fuse that was out, while it was taken; <see
    /// cref="EveryLamp"/> for all lamps, null for none. A lamp or fuse that is itself measured by an ohmmeter is out
    /// where it is named here as well.</summary>
    public string? Unplugged { get; init; }

    /// <summary>Whether the test was passed over, so that it is not asked for again; it then has no result.</summary>
    public bool IsSkipped { get; init; }

    /// <summary>Instrument.</summary>
    public required Instrument Instrument { get; init; }

    /// <summary>Voltage, black lead on battery minus; null for another result.</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>Current, of either sign; null for another result.</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>Resistance, that of the leads included, zero or more; null for another result.</summary>
    public ElectricResistance? Resistance { get; init; }

    /// <summary>Whether the ohmmeter showed an open circuit (<c>open</c>).</summary>
    public bool IsOpen { get; init; }

    /// <summary>How the lamp or test lamp looked; null for another result.</summary>
    public Brightness? Seen { get; init; }

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }
}
