using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>When a fuse opens at one current: a band, never a single time.</summary>
/// <remarks>
/// Within the published gates by log–log interpolation. Above the last gate the longest time is that of the last gate's
/// energy, t = tlast·(Ilast/I)²: more current leaves less time to lose heat, so the energy that melts the element never
/// rises with current (derived). How fast it may be there is not published. Source of the gates: tables/fuse-gates.csv.
/// </remarks>
internal sealed record OpeningTime
{
    private readonly TimeCurrentLimits _gates;

    private OpeningTime(
        TimeCurrentLimits gates,
        OpeningOutcome outcome,
        double ofRating,
        double? fastest,
        double? slowest
    )
    {
        _gates = gates;
        Outcome = outcome;
        OfRating = Ratio.FromDecimalFractions(ofRating);
        Fastest = From(fastest);
        Slowest = From(slowest);
    }

    /// <summary>What the gates say.</summary>
    public OpeningOutcome Outcome { get; }

    /// <summary>The current as a share of the rating; 100 % is the rating itself.</summary>
    public Ratio OfRating { get; }

    /// <summary>It opens no sooner; null where nothing is published.</summary>
    public Duration? Fastest { get; }

    /// <summary>It opens no later; null where nothing is published, and then it may never open.</summary>
    public Duration? Slowest { get; }

    /// <summary>The same in words.</summary>
    public string Explanation
    {
        get
        {
            TimeCurrentLimits gates = _gates;
            string percent = string.Create(
                CultureInfo.InvariantCulture,
                $"{100 * OfRating.DecimalFractions:0} % of the rating"
            );
            return Outcome switch
            {
                OpeningOutcome.Carries => $"carries {percent}",
                OpeningOutcome.BelowOpeningGates =>
                    $"{percent} lies below the first gate by which it must open ({100 * gates.FirstSlowest.OfRating:0} "
                        + $"%): it may carry this without "
                        + $"end{(Fastest is { } f ? $", and holds at least {Text(f.Seconds)}" : "")}",
                OpeningOutcome.Opens when Fastest is { } least =>
                    $"opens at {percent} in {Text(least.Seconds)} to {Text(Slowest!.Value.Seconds)}",
                OpeningOutcome.Opens =>
                    $"opens at {percent} within {Text(Slowest!.Value.Seconds)} (how fast is not published)",
                _ => $"{percent} lies above the last gate ({100 * gates.LastSlowest.OfRating:0} %): opens within "
                    + $"{Text(Slowest!.Value.Seconds)} by that gate's energy; how fast is not published",
            };
        }
    }

    /// <summary>The opening time of a fuse at 25 °C.</summary>
    public static OpeningTime Calculate(FuseStyle style, ElectricCurrent rating, ElectricCurrent current)
    {
        if (!(rating.Amperes > 0))
            throw new ArgumentOutOfRangeException(nameof(rating), rating, "A fuse's rating is above zero.");
        if (!(current.Amperes >= 0))
            throw new ArgumentOutOfRangeException(nameof(current), current, "A current is zero or more.");
        TimeCurrentLimits gates = TimeCurrentLimits.Of(style, rating.Amperes);
        double x = current.Amperes / rating.Amperes;
        double? fastest = gates.FastestSeconds(x),
            slowest = gates.SlowestSeconds(x);
        if (x <= 1)
            return new(gates, OpeningOutcome.Carries, x, null, null);
        // No gate lies between the rating and the first one; the fuse is no quicker there than at the first.
        if (x < gates.FirstFastest.OfRating)
            fastest = gates.FirstFastest.Seconds;
        if (x < gates.FirstSlowest.OfRating)
            return new(gates, OpeningOutcome.BelowOpeningGates, x, fastest, null);
        return slowest is null
            ? new(
                gates,
                OpeningOutcome.AboveGates,
                x,
                null,
                gates.LastSlowest.Seconds * Math.Pow(gates.LastSlowest.OfRating / x, 2)
            )
            : new(gates, OpeningOutcome.Opens, x, fastest, slowest);
    }

    internal static string Text(double seconds) =>
        seconds switch
        {
            >= 7200 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600:0.#} h"),
            >= 120 => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.#} min"),
            >= 0.1 => string.Create(CultureInfo.InvariantCulture, $"{seconds:0.##} s"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{seconds * 1000:0.##} ms"),
        };

    private static Duration? From(double? seconds) => seconds is { } s ? Duration.FromSeconds(s) : null;
}
