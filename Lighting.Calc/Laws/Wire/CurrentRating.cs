using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Current rating of a wire (current-carrying capacity, IEC; "ampacity", US): printed rating × ambient factor
/// × bundle factor.</summary>
/// <remarks>
/// Data: tables/current-ratings.csv. Gauges by 33 CFR 183.425 (80 °C insulation, 30 °C air), metric sizes by DIN VDE
/// 0298-4 and JIS C 3406 in free air. Both metric sources allow a rise of 40 K; the insulation of an older harness is
/// seldom known, so every metric size is rated at 70 °C (ordinary PVC) from 30 °C air. A gauge without a rating of its
/// own takes that of the next smaller gauge, or else that of the next smaller metric size. Of a stated
/// <see cref="CableKind"/> the trade rating (tables/cable-ratings.csv) is linear in area between printed sizes; below
/// the first and above the last in proportion to area, ordinary cable never above thin wall, and thin wall never above
/// its last. An old inch size of which no kind is stated has the rating printed for inch sizes, never above that of
/// ordinary cable.
/// </remarks>
public sealed record CurrentRating
{
    private const double ReferenceCelsius = 30;
    private const double MetricLimitCelsius = 70;
    private const double SameArea = 1e-9;
    private static readonly ImmutableArray<Printed> s_gauges = Read(
        "awg",
        r => AmericanWireGauge.Solid((int)r.Number("size")).CopperArea.SquareMillimeters,
        r => r.Number("conductor_limit_celsius"),
        r => r.Number("ambient_celsius")
    );
    private static readonly ImmutableArray<Printed> s_metric = Read(
        "mm2",
        r => r.Number("size"),
        _ => MetricLimitCelsius,
        _ => ReferenceCelsius
    );

    private static readonly ImmutableArray<Printed> s_ordinary = ReadCable("ordinary", "as ordinary PVC cable");
    private static readonly ImmutableArray<Printed> s_inch = ReadCable("inch", "as old inch cable");
    private static readonly ImmutableArray<Printed> s_thinWall = ReadCable("thin wall", "as thin-wall cable");

    private readonly Printed? _row;
    private readonly bool _isOwn;

    private CurrentRating(
        WireSize wire,
        Temperature ambient,
        int bundle,
        CurrentRatingBasis basis,
        Printed? row,
        bool isOwn
    )
    {
        Wire = wire;
        Ambient = ambient;
        Bundle = bundle;
        Basis = basis;
        (_row, _isOwn) = (row, isOwn);
    }

    /// <summary>The wire.</summary>
    public WireSize Wire { get; }

    /// <summary>Ambient temperature.</summary>
    public Temperature Ambient { get; }

    /// <summary>Loaded wires in the bundle, this one included.</summary>
    public int Bundle { get; }

    /// <summary>Share of the bundle's capacity in use; null where all its wires are loaded.</summary>
    public Ratio? BundleLoading { get; private init; }

    /// <summary>Basis of the rating, or the reason why there is none.</summary>
    internal CurrentRatingBasis Basis { get; }

    /// <summary>Continuous current rating; null if none is published, zero at an ambient as hot as the limit of the
    /// insulation.</summary>
    public ElectricCurrent? Current { get; private init; }

    /// <summary>The printed rating, before the factors; null if there is none.</summary>
    public ElectricCurrent? PublishedCurrent { get; private init; }

    /// <summary>The rating of the wire alone, with the ambient factor and without that of the bundle; null where there
    /// is no printed rating.</summary>
    public ElectricCurrent? Alone => PublishedCurrent * AmbientFactor?.DecimalFractions;

    /// <summary>Temperature limit of the insulation; null if there is no printed rating.</summary>
    public Temperature? ConductorLimit { get; private init; }

    /// <summary>Factor for the ambient; null if there is no printed rating.</summary>
    public Ratio? AmbientFactor { get; private init; }

    /// <summary>Factor for the bundle; null where none is printed.</summary>
    public Ratio? BundleFactor { get; private init; }

    /// <summary>In words: which printed rating, which factors, or why there is no rating.</summary>
    public string Explanation =>
        _row is { } row
            ? (_isOwn ? $"{Wire}" : $"{row.Size}, the next smaller size with a published rating,")
                + string.Create(
                    CultureInfo.InvariantCulture,
                    $" is rated {row.Amperes:0.##} A {row.Where} at {row.AmbientCelsius:0} °C with "
                        + $"{row.LimitCelsius:0} °C insulation"
                )
                + Factors()
            : $"no rating is published for {Wire} or any smaller wire";

    /// <summary>Source of the printed rating; empty if there is none.</summary>
    public string Source { get; private init; } = "";

    /// <summary>The rating of a wire.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="ambient">Ambient temperature, −40 °C and above.</param>
    /// <param name="bundle">Loaded wires in the bundle, this one included; 1 or more.</param>
    /// <param name="cable">The kind of cable; null, where it is not known, takes free air.</param>
    /// <param name="loading">Share of the bundle's capacity in use; null where all its wires are loaded.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static CurrentRating Calculate(
        WireSize wire,
        Temperature ambient,
        int bundle,
        CableKind? cable = null,
        Ratio? loading = null
    )
    {
        Ratio? bundleFactor = BundleDerating.Of(bundle, loading);
        ImmutableArray<Printed> kind = wire.IsGauge ? s_gauges : s_metric;
        double area = wire.CopperArea.SquareMillimeters;
        // A gauge looks among the gauges first, so that gauges are compared at one insulation.
        Printed? ofCable = cable switch
        {
            CableKind.Ordinary => OfOrdinary(wire.Name, area),
            CableKind.ThinWall => Between(s_thinWall, wire.Name, area) with
            {
                Amperes = Math.Min(Between(s_thinWall, wire.Name, area).Amperes, s_thinWall[^1].Amperes),
            },
            null when wire.Construction == WireConstruction.InchStrands => OfInch(wire.Name, area),
            _ => null,
        };
        if ((ofCable ?? Largest(kind, area) ?? Largest(s_metric, area)) is not { } row)
            return new(wire, ambient, bundle, CurrentRatingBasis.NoPublishedRating, row: null, isOwn: false)
            {
                BundleFactor = bundleFactor,
            };
        var limit = Temperature.FromDegreesCelsius(row.LimitCelsius);
        Ratio ambientFactor = AmbientDerating.Factor(
            limit,
            Temperature.FromDegreesCelsius(row.AmbientCelsius),
            ambient
        );
        var published = ElectricCurrent.FromAmperes(row.Amperes);
        bool own = ofCable is not null || kind.Contains(row) && row.SquareMillimetres >= area - SameArea;
        CurrentRatingBasis basis =
            bundleFactor is null ? CurrentRatingBasis.NoPublishedBundleFactor
            : ambientFactor.DecimalFractions <= 0 ? CurrentRatingBasis.AmbientTooHot
            : own ? CurrentRatingBasis.Published
            : CurrentRatingBasis.SmallerSize;
        return new(wire, ambient, bundle, basis, row, own)
        {
            BundleLoading = loading,
            PublishedCurrent = published,
            ConductorLimit = limit,
            AmbientFactor = ambientFactor,
            BundleFactor = bundleFactor,
            Current = bundleFactor is { } f ? published * (ambientFactor.DecimalFractions * f.DecimalFractions) : null,
            Source = row.Source,
        };
    }

    private string Factors() =>
        (AmbientFactor, BundleFactor) switch
        {
            (_, null) =>
                $"; no factor is published for {Bundle} loaded wires in a bundle (maximum {BundleDerating.MostWires})",
            ({ DecimalFractions: > 0 } ambient, { } bundle) => string.Create(
                CultureInfo.InvariantCulture,
                $", × {ambient.DecimalFractions:0.00} for an ambient of {Ambient.DegreesCelsius:0} °C × "
                    + $"{bundle.DecimalFractions:0.00} for a bundle of {Bundle}"
                    + $"{(BundleLoading is { } part ? $" loaded to {part.Percent:0} %" : "")}"
            ),
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"; at an ambient of {Ambient.DegreesCelsius:0} °C the rating is zero"
            ),
        };

    private static Printed? Largest(ImmutableArray<Printed> printed, double squareMillimetres) =>
        printed.LastOrDefault(p => p.SquareMillimetres <= squareMillimetres + SameArea);

    private static Printed OfOrdinary(string name, double area)
    {
        Printed own = Between(s_ordinary, name, area);
        return own with { Amperes = Math.Min(own.Amperes, Between(s_thinWall, name, area).Amperes) };
    }

    private static Printed OfInch(string name, double area)
    {
        Printed own = Between(s_inch, name, area);
        return own with { Amperes = Math.Min(own.Amperes, OfOrdinary(name, area).Amperes) };
    }

    // Linear between the printed sizes; outside them in proportion to the area.
    private static Printed Between(ImmutableArray<Printed> printed, string name, double area)
    {
        int above = 0;
        while (above < printed.Length && printed[above].SquareMillimetres < area - SameArea)
            above++;
        if (above == 0 || above == printed.Length)
        {
            Printed end = above == 0 ? printed[0] : printed[^1];
            return end with { Size = name, Amperes = end.Amperes * area / end.SquareMillimetres };
        }

        Printed low = printed[above - 1],
            high = printed[above];
        double share = (area - low.SquareMillimetres) / (high.SquareMillimetres - low.SquareMillimetres);
        return low with { Size = name, Amperes = low.Amperes + share * (high.Amperes - low.Amperes) };
    }

    private static ImmutableArray<Printed> ReadCable(string kind, string where) =>
        [
            .. PublishedTable
                .Load("cable-ratings")
                .Read()
                .Where(r => r.Text("kind") == kind)
                .Select(r => new Printed(
                    "",
                    r.Number("area_mm2"),
                    r.Number("rating_a"),
                    r.Number("conductor_limit_celsius"),
                    r.Number("ambient_celsius"),
                    r.Text("source"),
                    where
                )),
        ];

    private static ImmutableArray<Printed> Read(
        string family,
        Func<TableRow, double> area,
        Func<TableRow, double> limit,
        Func<TableRow, double> ambient
    ) =>
        [
            .. PublishedTable
                .Load("current-ratings")
                .Read()
                .Where(r => r.Text("family") == family)
                .Select(r => new Printed(
                    $"{r.Text("size")} {(family == "awg" ? "AWG" : family)}",
                    area(r),
                    r.Number("rating_a"),
                    limit(r),
                    ambient(r),
                    r.Text("source")
                ))
                .OrderBy(p => p.SquareMillimetres),
        ];

    private sealed record Printed(
        string Size,
        double SquareMillimetres,
        double Amperes,
        double LimitCelsius,
        double AmbientCelsius,
        string Source,
        string Where = "in free air"
    );
}
