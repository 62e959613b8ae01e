using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What to cut, crimp, label and buy for the loom of a bike.</summary>
/// <remarks>
/// Cut length = (length × (1 + slack) + slack length), rounded up to whole centimetres; copper mass = Σ area × cut
/// length × density, 8.89 g/cm³ (tables/constants.csv, IEC 60028), by nominal areas.
/// </remarks>
public sealed class CutList
{
    private static readonly double s_gramsPerCubicCentimetre = Constants.Of("density_cu");

    private CutList(Bike bike, CutListOptions options)
    {
        Bike = bike;
        Options = options;
        Wires = [.. bike.Runs.Index().Zip(Labels(bike), (r, label) => Wire(r.Index, r.Item, label))];
        WireTotals =
        [
            .. Wires
                .GroupBy(w => (w.Run.Wire, w.Cable, w.Run.Colour))
                .OrderBy(g => g.Key.Wire.CopperArea.SquareMillimeters)
                .ThenBy(g => g.Key.Wire.Name, StringComparer.Ordinal)
                .ThenBy(g => g.Key.Cable)
                .ThenBy(g => g.Key.Colour?.Code, StringComparer.Ordinal)
                .Select(g => TotalOf(g.Key.Wire, g.Key.Cable, g.Key.Colour, [.. g])),
        ];
        TerminalTotals =
        [
            .. Terminals()
                .GroupBy(t => t)
                .OrderBy(g => g.Key.Terminal, Name.Comparer)
                .ThenBy(g => g.Key.Wire.CopperArea.SquareMillimeters)
                .Select(g => new TerminalTotal(
                    g.Key.Terminal,
                    g.Key.Wire,
                    g.Count(),
                    g.Count() * PriceOf($"{g.Key.Terminal} {g.Key.Wire}", g.Key.Terminal)
                )),
        ];
        CopperMass = Mass.FromGrams(
            Wires.Sum(w => w.Run.Wire.CopperArea.SquareMillimeters * w.CutLength.Meters) * s_gramsPerCubicCentimetre
        );
    }

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>By what it was made.</summary>
    public CutListOptions Options { get; }

    /// <summary>The wires, in the order of the list.</summary>
    public ImmutableArray<CutWire> Wires { get; }

    /// <summary>Totals by size, kind of cable and colour, smallest first.</summary>
    public ImmutableArray<WireTotal> WireTotals { get; }

    /// <summary>Totals of terminals by kind and wire size.</summary>
    public ImmutableArray<TerminalTotal> TerminalTotals { get; }

    /// <summary>Copper of the wires that are cut, without spare.</summary>
    public Mass CopperMass { get; }

    /// <summary>Cost of all that has a price; null where nothing has.</summary>
    public decimal? Cost
    {
        get
        {
            decimal[] known =
            [
                .. WireTotals.Select(w => w.Cost).Concat(TerminalTotals.Select(t => t.Cost)).OfType<decimal>(),
            ];
            return known.Length > 0 ? known.Sum() : null;
        }
    }

    /// <summary>What the prices do not cover, where there are any.</summary>
    public ImmutableArray<string> Unpriced =>
        Options.Prices.IsEmpty
            ? []
            :
            [
                .. WireTotals.Where(w => w.Cost is null).Select(w => $"{w.Wire} {w.Colour}".TrimEnd()),
                .. TerminalTotals.Where(t => t.Cost is null).Select(t => $"{t.Terminal} {t.Wire}"),
            ];

    /// <summary>Makes the cut list of a bike.</summary>
    /// <param name="bike">A bike with runs, each with its wire chosen.</param>
    /// <param name="options">Slack, spare and prices; null for the defaults.</param>
    /// <exception cref="ArgumentException">The bike has no runs, or the wire of one is open.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A slack or spare is below zero.</exception>
    public static CutList Of(Bike bike, CutListOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(bike);
        options ??= new CutListOptions();
        if (!bike.HasNetwork)
            throw new ArgumentException("The bike has no runs: there is no wire to cut.", nameof(bike));
        if (bike.Runs.FirstOrDefault(r => r.WireIsOpen) is { } open)
            throw new ArgumentException($"The wire of '{open.Name}' is not chosen yet.", nameof(bike));
        if (
            !(
                options.Slack.DecimalFractions >= 0
                && options.SlackLength.Meters >= 0
                && options.Spare.DecimalFractions >= 0
            )
        )
            throw new ArgumentOutOfRangeException(nameof(options), "Slack and spare must be zero or more.");
        return new CutList(bike, options);
    }

    private CutWire Wire(int index, Run run, string label)
    {
        double metres = run.Length.Meters * (1 + Options.Slack.DecimalFractions) + Options.SlackLength.Meters;
        Length cut = Length.FromCentimeters(Math.Ceiling(100 * metres - 1e-6));
        return new CutWire(
            index + 1,
            label,
            run,
            run.Cable ?? Bike.Cable,
            cut,
            EndAt(run.From, run.FromEnd),
            EndAt(run.To, run.ToEnd)
        );
    }

    private WireEnd EndAt(string point, string? listed) =>
        new(point, listed ?? Assumed(point), isAssumed: listed is null);

    private string Assumed(string point)
    {
        if (Is(Bike.BatteryPlus) || Is(Bike.BatteryMinus) || HasWord("frame") || HasWord("earth"))
            return WireEnd.Ring;
        if (Bike.Switches.Any(s => Is(s.From) || Is(s.To)) || Bike.Fuses.Any(f => Is(f.From!) || Is(f.To!)))
            return WireEnd.Blade;
        return Bike.Lamps.Any(l => Is(l.Feed!) || Is(l.Return!)) ? WireEnd.Bullet : WireEnd.Splice;

        bool Is(string other) => Name.Equal(point, other);

        bool HasWord(string word) => point.Split(' ').Contains(word, Name.Comparer);
    }

    // A splice is one part for all the wires that meet in it.
    private IEnumerable<(string Terminal, WireSize Wire)> Terminals()
    {
        (WireEnd End, WireSize Wire)[] ends =
        [
            .. Wires.SelectMany(w => new[] { (w.FromEnd, w.Run.Wire), (w.ToEnd, w.Run.Wire) }),
        ];
        ILookup<bool, (WireEnd End, WireSize Wire)> isSplice = ends.ToLookup(e =>
            Name.Equal(e.End.Terminal, WireEnd.Splice)
        );
        return isSplice[false]
            .Select(e => (e.End.Terminal, e.Wire))
            .Concat(
                isSplice[true]
                    .GroupBy(e => e.End.Point, Name.Comparer)
                    .Select(g => (WireEnd.Splice, g.MaxBy(e => e.Wire.CopperArea.SquareMillimeters).Wire))
            );
    }

    private WireTotal TotalOf(WireSize wire, CableKind? cable, WireColour? colour, CutWire[] wires)
    {
        Length cut = Length.FromCentimeters(Math.Round(wires.Sum(w => w.CutLength.Centimeters)));
        Length toBuy = Length.FromCentimeters(
            Math.Ceiling(cut.Centimeters * (1 + Options.Spare.DecimalFractions) - 1e-6)
        );
        decimal? price = colour is null ? PriceOf(wire.Name) : PriceOf($"{wire} {colour}", wire.Name);
        return new WireTotal(
            wire,
            cable,
            colour,
            wires.Length,
            cut,
            toBuy,
            price * (decimal)Math.Round(toBuy.Meters, 2)
        );
    }

    // The most particular item first.
    private decimal? PriceOf(params ReadOnlySpan<string> items)
    {
        foreach (string item in items)
            foreach (ItemPrice price in Options.Prices)
                if (Name.Equal(price.Item, item))
                    return price.Price;
        return null;
    }

    private static IEnumerable<string> Labels(Bike bike)
    {
        var taken = new Dictionary<string, int>(Name.Comparer);
        foreach (Run run in bike.Runs)
        {
            string[] words =
            [
                .. run
                    .Name.Split([' ', '-', '/', '_'], StringSplitOptions.RemoveEmptyEntries)
                    .Select(w => string.Concat(w.Where(char.IsLetterOrDigit)))
                    .Where(w => w.Length > 0),
            ];
            string label = (
                words.Length > 1 ? string.Concat(words.Select(w => w[0]))
                : words.Length == 1 ? words[0][..Math.Min(2, words[0].Length)]
                : "W"
            ).ToUpperInvariant();
            int count = taken[label] = taken.GetValueOrDefault(label) + 1;
            string own = count == 1 ? label : label + count.ToString(CultureInfo.InvariantCulture);
            // One named as another is numbered.
            while (count > 1 && !taken.TryAdd(own, 1))
                own = label + (count = ++taken[label]).ToString(CultureInfo.InvariantCulture);
            yield return own;
        }
    }
}
