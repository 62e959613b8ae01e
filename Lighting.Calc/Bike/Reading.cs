using UnitsNet;

namespace Lighting.Calc;

/// <summary>One thing measured or seen on the bike: one row of <c>readings.csv</c>. Exactly one of the five results is set.</summary>
public sealed record Reading
{
    /// <summary>The switches held while it was taken; a switch that is not named is off.</summary>
    public required Condition When { get; init; }

    /// <summary>The point probed, the fuse replaced by an ammeter, or the lamp or run looked at.</summary>
    public required string Point { get; init; }

    /// <summary>What it was taken with.</summary>
    public required Instrument Instrument { get; init; }

    /// <summary>Volts on the meter, black lead on battery minus; null for another result.</summary>
    public ElectricPotential? Voltage { get; init; }

    /// <summary>Amps on the ammeter, of either sign; null for another result.</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>Ohms on the ohmmeter, its leads' own included, zero or more; null for another result.</summary>
    public ElectricResistance? Resistance { get; init; }

    /// <summary>Whether the ohmmeter showed no connection at all (<c>open</c>).</summary>
    public bool IsOpen { get; init; }

    /// <summary>How the lamp or test lamp looked; null for another result.</summary>
    public Brightness? Seen { get; init; }
}
