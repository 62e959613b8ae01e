using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A dead short to the frame at the far end of a run: how much current, and how soon the fuse opens.</summary>
/// <remarks>
/// Ohm's law: I = V/(battery + fuse + way of least resistance to the far end + way back), V the battery's with the
/// engine off. The way back is that of the worst-off lamp beyond the run, as the lists have it; the short itself, and a
/// frame the lists do not have, are taken as without resistance.
/// </remarks>
/// <param name="Run">The run.</param>
/// <param name="FarEnd">The point shorted to the frame.</param>
/// <param name="Setting">The setting with the most resistance in the way.</param>
/// <param name="Path">The parts in the way to the short, battery first.</param>
/// <param name="ReturnFrom">The point from which the way back is counted; null where no lamp beyond the run tells,
/// and the way back is then taken as zero.</param>
/// <param name="LoopResistance">Resistance of the whole loop.</param>
/// <param name="ProspectiveCurrent">The prospective current; null when nothing in the lists limits it.</param>
/// <param name="Opening">When the fuse opens; null with <see cref="ProspectiveCurrent"/>.</param>
/// <param name="LetThroughAmpereSquaredSeconds">Heat of the short until the published opening time, I²·t; null where
/// no opening time within 5 s is published.</param>
/// <param name="SmallestWire">Copper of the smallest wire in its way.</param>
/// <param name="Clears">Whether the fuse opens and every wire in the way lasts until then; null where no published
/// figure shows it.</param>
internal sealed record ShortCircuitCheck(
    Run Run,
    string FarEnd,
    Setting Setting,
    ImmutableArray<string> Path,
    string? ReturnFrom,
    ElectricResistance LoopResistance,
    ElectricCurrent? ProspectiveCurrent,
    OpeningTime? Opening,
    double? LetThroughAmpereSquaredSeconds,
    Area SmallestWire,
    bool? Clears
)
{
    /// <summary>Heat that the smallest wire in its way withstands, k²·S² with k = 115.</summary>
    internal double WithstandAmpereSquaredSeconds => ShortCircuitHeat.AmpereSquaredSeconds(SmallestWire);
}
