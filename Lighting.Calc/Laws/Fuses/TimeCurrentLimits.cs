using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The published time gates of a fuse style: at so many percent of the rating, open no sooner and no
/// later.</summary>
/// <remarks>
/// Between gates the logarithm of the time is linear in the logarithm of the current. Data: tables/fuse-gates.csv.
/// Below the first and above the last gate of a bound there is no published figure: null.
/// </remarks>
internal sealed class TimeCurrentLimits
{
    // Of each style those of the largest ratings first.
    private static readonly ILookup<FuseStyle, (double FromAmperes, TimeCurrentLimits Limits)> s_all = PublishedTable
        .Load("fuse-gates")
        .Read()
        .GroupBy(r => (Style: r.Text("style"), From: r.Number("from_rating_a")))
        .OrderByDescending(g => g.Key.From)
        .ToLookup(
            g => Enum.Parse<FuseStyle>(g.Key.Style, ignoreCase: true),
            g => (g.Key.From, new TimeCurrentLimits(g))
        );

    private readonly ImmutableArray<GatePoint> _fastest;
    private readonly ImmutableArray<GatePoint> _slowest;
    private readonly ImmutableArray<GatePoint> _logFastest;

    private TimeCurrentLimits(IEnumerable<TableRow> gates)
    {
        ImmutableArray<TableRow> rows = [.. gates.OrderBy(r => r.Number("percent_of_rating"))];
        _fastest = Points(rows, "min_s");
        _slowest = Points(rows, "max_s");
        _logFastest = [.. _fastest.Select(p => new GatePoint(Math.Log(p.OfRating), Math.Log(p.Seconds)))];
    }

    public GatePoint FirstFastest => _fastest[0];

    public GatePoint LastFastest => _fastest[^1];

    public GatePoint FirstSlowest => _slowest[0];

    public GatePoint LastSlowest => _slowest[^1];

    /// <summary>Whether the shortest opening times are published over the span in which a surge could open the
    /// fuse.</summary>
    public bool HasFastest => _fastest.Length > 1;

    /// <summary>The word tables and reports use for a style.</summary>
    public static string NameOf(FuseStyle style) => style.ToString().ToLowerInvariant();

    /// <summary>The limits of a style and rating.</summary>
    public static TimeCurrentLimits Of(FuseStyle style, double ratingAmperes) =>
        s_all[style].First(l => l.FromAmperes <= ratingAmperes).Limits;

    /// <summary>Shortest opening seconds at a current in ratings; null outside the gates.</summary>
    public double? FastestSeconds(double ofRating) => Interpolate(_fastest, ofRating);

    /// <summary>Logarithm of the shortest opening seconds at the logarithm of a current in ratings; null outside the
    /// gates.</summary>
    public double? LogFastestSeconds(double logOfRating)
    {
        for (int i = 1; i < _logFastest.Length; i++)
            if (logOfRating >= _logFastest[i - 1].OfRating && logOfRating <= _logFastest[i].OfRating)
            {
                (double fromX, double fromY) = _logFastest[i - 1];
                (double toX, double toY) = _logFastest[i];
                return fromY + (logOfRating - fromX) / (toX - fromX) * (toY - fromY);
            }

        return null;
    }

    /// <summary>Longest opening seconds at a current in ratings; null outside the gates.</summary>
    public double? SlowestSeconds(double ofRating) => Interpolate(_slowest, ofRating);

    /// <summary>Shortest opening seconds at the next published current, the same or higher; null where there is
    /// none.</summary>
    public GatePoint? FastestAtNext(double ofRating) =>
        _fastest.Any(p => p.OfRating >= ofRating - 1e-9) ? _fastest.First(p => p.OfRating >= ofRating - 1e-9) : null;

    /// <summary>Longest opening seconds as published: those at the next lower published current, and above a last gate
    /// within which little heat is given off no more than its energy allows; null below the first.</summary>
    public double? PublishedSlowestSeconds(double ofRating) =>
        ofRating >= LastSlowest.OfRating && LastSlowest.Seconds <= ShortCircuitHeat.LongestSeconds
            ? LastSlowest.Seconds * Math.Pow(LastSlowest.OfRating / ofRating, 2)
        : ofRating >= FirstSlowest.OfRating ? _slowest.Last(p => p.OfRating <= ofRating).Seconds
        : null;

    private static double? Interpolate(ImmutableArray<GatePoint> points, double ofRating)
    {
        for (int i = 0; i < points.Length; i++)
        {
            if (ofRating == points[i].OfRating)
                return points[i].Seconds;
            if (i > 0 && ofRating > points[i - 1].OfRating && ofRating < points[i].OfRating)
            {
                double share =
                    Math.Log(ofRating / points[i - 1].OfRating) / Math.Log(points[i].OfRating / points[i - 1].OfRating);
                return points[i - 1].Seconds * Math.Pow(points[i].Seconds / points[i - 1].Seconds, share);
            }
        }

        return null;
    }

    private static ImmutableArray<GatePoint> Points(ImmutableArray<TableRow> rows, string column) =>
        [
            .. rows.Where(r => r.NumberOrNull(column) is not null)
                .Select(r => new GatePoint(r.Number("percent_of_rating") / 100, r.Number(column))),
        ];

    /// <summary>One bound of one gate.</summary>
    /// <param name="OfRating">Current in ratings.</param>
    /// <param name="Seconds">Time.</param>
    internal readonly record struct GatePoint(double OfRating, double Seconds);
}
