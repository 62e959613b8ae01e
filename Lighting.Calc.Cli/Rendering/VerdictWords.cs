using Lighting.Calc.Fuses;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The words of a fuse's verdict, as JSON and people read them.</summary>
internal static class VerdictWords
{
    public static string Of(FuseVerdict verdict) => verdict switch
    {
        FuseVerdict.Suits => "suits",
        FuseVerdict.TooSmall => "too small",
        FuseVerdict.TooLargeForTheWire => "too large for the wire",
        FuseVerdict.WillNotClear => "will not clear",
        _ => throw new InvalidOperationException($"Unknown verdict {verdict}."),
    };
}
