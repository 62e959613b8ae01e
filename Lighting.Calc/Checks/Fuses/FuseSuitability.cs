using System.Collections.Immutable;
using System.Diagnostics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Whether one fuse suits, with all that the verdict rests on.</summary>
public sealed class FuseSuitability
{
    /// <summary>The fuse.</summary>
    public required Fuse Fuse { get; init; }

    /// <summary>The continuous rating it is judged by: its marked rating, or half of it for a glass fuse marked with
    /// the blowing current.</summary>
    public required ElectricCurrent ContinuousRating { get; init; }

    /// <summary>The verdict.</summary>
    public required FuseVerdict Verdict { get; init; }

    /// <summary>The verdict in words: <c>suits</c>, <c>overloaded</c>, <c>too large for the wire</c>, <c>will not
    /// clear</c> or <c>not judged</c>.</summary>
    public string VerdictText => TextOf(Verdict);

    /// <summary>The verdict as one line, such as <c>15 A main: suits — 9.9 A at most, 11.25 A usable</c>.</summary>
    public required string Headline { get; init; }

    /// <summary>What is against it, the most dangerous first; empty when it suits.</summary>
    public required ImmutableArray<string> Reasons { get; init; }

    /// <summary>The steady load.</summary>
    public required ContinuousLoad Steady { get; init; }

    /// <summary>The surge on switching on; null where it feeds no lamp.</summary>
    public required InrushCheck? InrushCheck { get; init; }

    /// <summary>The protection of the wires.</summary>
    public required FuseProtection Protection { get; init; }

    /// <summary>A dead short at the far end of each run it feeds.</summary>
    public required ImmutableArray<ShortCircuitCheck> Clearing { get; init; }

    /// <summary>Which rating to fit.</summary>
    public required FuseAdvice Advice { get; init; }

    /// <summary>Everything worth telling about it.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    internal static string TextOf(FuseVerdict verdict) =>
        verdict switch
        {
            FuseVerdict.Suits => "suits",
            FuseVerdict.Overloaded => "overloaded",
            FuseVerdict.TooLargeForTheWire => "too large for the wire",
            FuseVerdict.WillNotClear => "will not clear",
            FuseVerdict.NotJudged => "not judged",
            _ => throw new UnreachableException($"Unknown verdict {verdict}."),
        };
}
