using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The nominal melting energy I²t that data sheets print for single ratings.</summary>
/// <remarks>Data: tables/fuse-melting.csv. Other ratings are not known: it rises faster than the square of the rating,
/// unlike from one make to another, so nothing is read between or beyond.</remarks>
internal static class FuseMelting
{
    private static readonly ImmutableArray<(string Style, double Amperes, double Energy)> s_rows =
    [
        .. PublishedTable
            .Load("fuse-melting")
            .Read()
            .Select(r => (r.Text("style"), r.Number("rating_a"), r.Number("nominal_melting_a2s"))),
    ];

    /// <summary>Ampere-squared seconds of a style and rating; null where none is published.</summary>
    public static double? AmpereSquaredSeconds(FuseStyle style, double ratingAmperes)
    {
        string name = TimeCurrentLimits.NameOf(style);
        foreach ((string rowStyle, double amperes, double energy) in s_rows)
            if (rowStyle == name && Math.Abs(amperes - ratingAmperes) < 1e-9)
                return energy;
        return null;
    }
}
