using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A dead short to the frame at the far end of a run: how much current, and how soon the fuse opens.</summary>
/// <remarks>
/// Ohm's law: I = V/(battery + fuse + way of least resistance to the far end + way back), V the battery's with the
/// engine off. The way back is that of the worst-off lamp beyond the run, as the lists have it; the short itself, and a
/// frame the lists do not have, are taken as without resistance.
/// </remarks>
internal sealed class ShortCircuitCheck
{
    /// <summary>The run.</summary>
    public Run Run { get; init; } = null!;

    /// <summary>The point shorted to the frame.</summary>
    public string FarEnd { get; init; } = null!;

    /// <summary>The setting with the most resistance in the way.</summary>
    public Setting Setting { get; init; } = null!;

    /// <summary>The parts in the way to the short, battery first.</summary>
    public ImmutableArray<string> Path { get; init; }

    /// <summary>The point from which the way back is counted; null where no lamp beyond the run tells, and the way back
    /// is then taken as zero.</summary>
    public string? ReturnFrom { get; init; }

    /// <summary>Resistance of the whole loop.</summary>
    public ElectricResistance LoopResistance { get; init; }

    /// <summary>The prospective current; null when nothing in the lists limits it.</summary>
    public ElectricCurrent? ProspectiveCurrent { get; init; }

    /// <summary>When the fuse opens; null with <see cref="ProspectiveCurrent"/>.</summary>
    public OpeningTime? Opening { get; init; }

    /// <summary>Heat of the short until the published opening time, I²·t; null where no opening time within 5 s is
    /// published.</summary>
    internal double? LetThroughAmpereSquaredSeconds { get; init; }

    /// <summary>Copper of the smallest wire in its way.</summary>
    public Area SmallestWire { get; init; }

    /// <summary>Heat that the smallest wire in its way withstands, k²·S² with k = 115.</summary>
    internal double WithstandAmpereSquaredSeconds => ShortCircuitHeat.AmpereSquaredSeconds(SmallestWire);

    /// <summary>Whether the fuse opens and every wire in the way lasts until then; null where no published figure shows
    /// it.</summary>
    public bool? Clears { get; init; }
}
