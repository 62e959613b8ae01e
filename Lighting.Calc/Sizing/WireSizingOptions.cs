using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>By what the wires of a harness are chosen.</summary>
public sealed record WireSizingOptions
{
    internal const int FewSizes = 3;

    /// <summary>The kind of wire to choose from; null takes the kind most runs already have.</summary>
    public WireConstruction? Family { get; init; }

    /// <summary>Whether odd gauges (15, 17 ...) may be chosen. 33 CFR 183.425 and AC 43.13-1B list the even ones, which
    /// are the ones sold.</summary>
    public bool IncludeOddGauges { get; init; }

    /// <summary>The only sizes to choose from, such as those in stock; empty, the default, takes all of the
    /// family.</summary>
    public ImmutableArray<WireSize> Stock { get; init; } = [];

    /// <summary>The most different sizes to choose, 1 or more; null takes three, or of <see cref="Stock"/> as many as
    /// are in it. Wire is bought by the reel (common practice, no source).</summary>
    public int? MostSizes { get; init; }

    /// <summary>Least copper area of any run, for strength; zero or more. Default 0.5 mm² (20 AWG).</summary>
    public Area MinimumArea { get; init; } = Area.FromSquareMillimeters(0.5);

    /// <summary>The largest area to choose; null for all.</summary>
    internal Area? LargestArea { get; init; }

    /// <summary>Largest drop of each lamp, as a share of the source voltage, above 0 to below 100 %; null takes for
    /// each the limit that <c>check</c> holds it to, where that is no advice.</summary>
    public Ratio? AllowedDrop { get; init; }

    /// <summary>
    /// Whether, engine off, the battery's own drop counts as part of each lamp's. Default true, as everywhere else a
    /// drop is stated: a harness that this finds good is good by the voltage at its lamps.
    /// </summary>
    public bool CountBatteryDrop { get; init; } = true;

    /// <summary>How the harness is checked: the settings in which the limits must hold; whether the engine runs, so
    /// that the battery's resistance is not in the way of the lamps; the voltage of the source; fuses and the air round
    /// the wires; charging.</summary>
    public CheckOptions Check { get; init; } = new();

    /// <summary>How the wires warm with their current; the square root takes them warmer than they are. Of a bike that
    /// states the temperature of its wires it changes nothing.</summary>
    public ConductorHeatRule HeatRule { get; init; }

    private object?[] Figures =>
        [
            Family,
            IncludeOddGauges,
            MostSizes,
            MinimumArea,
            LargestArea,
            AllowedDrop,
            CountBatteryDrop,
            Check,
            HeatRule,
        ];

    /// <inheritdoc/>
    public bool Equals(WireSizingOptions? other) =>
        other is not null && Figures.AsSpan().SequenceEqual(other.Figures) && Stock.HoldsSame(other.Stock);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Family, Stock.HashOfParts());
}
