using System.Collections.Immutable;
using System.Diagnostics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Whether one fuse suits, with all that the verdict rests on.</summary>
public sealed class FuseSuitability
{
    internal FuseSuitability() { }

    /// <summary>The fuse.</summary>
    public Fuse Fuse { get; internal init; } = null!;

    /// <summary>The continuous rating it is judged by: its marked rating, or half of it for a glass fuse marked with
    /// the blowing current.</summary>
    public ElectricCurrent ContinuousRating { get; internal init; }

    /// <summary>The verdict.</summary>
    public FuseVerdict Verdict { get; internal init; }

    /// <summary>The verdict in words: <c>suits</c>, <c>overloaded</c>, <c>too large for the wire</c>, <c>will not
    /// clear</c> or <c>not judged</c>.</summary>
    public string VerdictText => TextOf(Verdict);

    /// <summary>The verdict as one line, such as <c>15 A main: suits — 9.9 A at most, 11.25 A usable</c>.</summary>
    public string Headline { get; internal init; } = null!;

    /// <summary>What is against it, the most dangerous first; empty when it suits.</summary>
    public ImmutableArray<string> Reasons { get; internal init; }

    /// <summary>The steady load.</summary>
    public ContinuousLoad Steady { get; internal init; } = null!;

    /// <summary>The surge on switching on; null where it feeds no lamp.</summary>
    internal InrushCheck? InrushCheck { get; init; }

    /// <summary>The protection of the wires.</summary>
    public FuseProtection Protection { get; internal init; } = null!;

    /// <summary>A dead short at the far end of each run it feeds.</summary>
    internal ImmutableArray<ShortCircuitCheck> Clearing { get; init; }

    /// <summary>Which rating to fit.</summary>
    public FuseAdvice Advice { get; internal init; } = null!;

    /// <summary>Everything worth telling about it.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; }

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
