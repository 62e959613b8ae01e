using System.Globalization;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>loom</c> gives: the wires to cut, the totals to buy, and labels to cut out.</summary>
internal static class LoomDocument
{
    private static readonly Columns<CutWire> s_wire = new()
    {
        { "no", "number", w => w.Number },
        { "label", "label", w => w.Label },
        { "run", "run", w => w.Run.Name },
        { "from", "from", w => w.Run.From },
        { "to", "to", w => w.Run.To },
        { "colour", "colour", w => w.Run.Colour?.Code },
        { "wire", "wire", w => new Cell($"{w.Run.Wire} {w.Run.Colour}".TrimEnd(), w.Run.Wire.Name) },
        { "cable", "cable", w => CommonBlocks.CableWord(w.Cable) },
        { "length m", "lengthM", w => Metres(w.Run.Length) },
        { "cut m", "cutM", w => Metres(w.CutLength) },
        { "end at from", "fromEnd", w => w.FromEnd.Terminal },
        { "end at to", "toEnd", w => w.ToEnd.Terminal },
        {
            "assumed",
            "endsAssumed",
            w =>
                (w.FromEnd.IsAssumed, w.ToEnd.IsAssumed) switch
                {
                    (true, true) => "both",
                    (true, false) => "from",
                    (false, true) => "to",
                    _ => "none",
                }
        },
        { "ends", "", w => $"{w.FromEnd.Terminal}/{w.ToEnd.Terminal}" },
    };

    private static readonly Columns<WireTotal> s_total = new()
    {
        { "size", "wire", t => t.Wire.Name },
        { "cable", "cable", t => CommonBlocks.CableWord(t.Cable) },
        { "colour", "colour", t => t.Colour?.Code },
        { "wires", "count", t => t.Count },
        { "cut m", "cutM", t => Metres(t.Cut) },
        { "with spare m", "toBuyM", t => Metres(t.ToBuy) },
    };

    private static readonly Columns<TerminalTotal> s_terminal = new()
    {
        { "terminal", "terminal", t => t.Terminal },
        { "for wire", "wire", t => t.Wire.Name },
        { "count", "count", t => t.Count },
    };

    private static readonly Columns<WireTotal> s_wireCost = new()
    {
        { s_total, t => t },
        { "cost", "cost", t => (double?)t.Cost },
    };

    private static readonly Columns<TerminalTotal> s_terminalCost = new()
    {
        { s_terminal, t => t },
        { "cost", "cost", t => (double?)t.Cost },
    };

    public static Document Of(CutList list) =>
        new(
            CommonBlocks.TitleOf(list.Bike, "Cut list"),
            Summary(list),
            Cautions.OfWork(list.Bike),
            () => Blocks(list),
            json =>
            {
                json.Write("bike", list.Bike.Name);
                json.Write("slackPercent", list.Options.Slack);
                json.Write("slackM", list.Options.SlackLength.Meters);
                json.Write("sparePercent", list.Options.Spare);
                json.Write("wires", s_wire.Only([.. s_wire.Keys.Where(k => k.Length > 0)]), list.Wires);
                json.Write("totals", s_wireCost, list.WireTotals);
                json.Write("terminals", s_terminalCost, list.TerminalTotals);
                json.Write("copperKg", list.CopperMass.Kilograms);
                json.Write("cost", (double?)list.Cost);
                json.Write("notPriced", list.Unpriced);
            }
        );

    private static IEnumerable<Block> Blocks(CutList list)
    {
        bool hasPrices = !list.Options.Prices.IsEmpty;
        yield return new Heading("Wires");
        yield return s_wire.Only("label", "from", "to", "wire", "cutM", "").Table(list.Wires);
        yield return s_wire.Only([.. s_wire.Keys.Where(k => k.Length > 0)]).Spreadsheet(list.Wires);
        if (list.Wires.Any(w => w.FromEnd.IsAssumed || w.ToEnd.IsAssumed))
            yield return new Paragraph(
                "Ends that runs.csv does not list are assumed: ring at battery and frame, blade at switches and fuses, "
                    + "bullet "
                    + "at lamps, splice where only wires meet. List them in the columns 'from end' and 'to end'."
            );
        yield return new Heading("Wire to buy");
        yield return (hasPrices ? s_wireCost : s_total).Table(list.WireTotals);
        yield return new Heading("Terminals");
        yield return (hasPrices ? s_terminalCost : s_terminal).Table(list.TerminalTotals);
        if (!list.Unpriced.IsEmpty)
            yield return new Paragraph($"Without a price: {string.Join(", ", list.Unpriced)}.");
        yield return new PageOnly(() =>
            [new Heading("Labels to cut out, one for each end"), new LabelSheet([.. list.Wires.SelectMany(Labels)])]
        );
    }

    private static IEnumerable<(string Mark, string Text)> Labels(CutWire wire)
    {
        string what = $"{wire.Run.Wire} {wire.Run.Colour}".TrimEnd();
        yield return (wire.Label, $"{wire.Run.From}\n{wire.FromEnd.Terminal}, {what}");
        yield return (wire.Label, $"{wire.Run.To}\n{wire.ToEnd.Terminal}, {what}");
    }

    private static string Summary(CutList list)
    {
        string sizes = string.Join(
            ", ",
            list.WireTotals.GroupBy(t => t.Wire)
                .Select(g => $"{g.Key} {Figures.Number(g.Sum(t => t.ToBuy.Meters), 2)} m")
        );
        string cost = list.Cost is { } known
            ? $" Cost {Figures.Number((double)known, 2)}{(list.Unpriced.IsEmpty ? "" : " without what has no price")}."
            : "";
        return $"{list.Wires.Length} wires, {list.TerminalTotals.Sum(t => t.Count)} terminals and splices. To buy, "
            + $"{Share(list.Options.Spare)} spare included: {sizes}.\nCut with {Share(list.Options.Slack)} slack"
            + (
                list.Options.SlackLength.Meters > 0
                    ? $" and {Figures.Number(list.Options.SlackLength.Centimeters, 0)}" + $" cm"
                    : ""
            )
            + $"; {Figures.Number(list.CopperMass.Grams, 0)} g of copper.{cost}";
    }

    private static string Share(Ratio share) => share.Percent.ToString("0.#", CultureInfo.InvariantCulture) + " %";

    private static Cell Metres(Length length) => Figures.Cell(length.Meters, 2);
}
