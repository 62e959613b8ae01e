using Lighting.Calc.Cli.Rendering.Drawing;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>diagram</c> gives: the drawing, and what it shows as tables.</summary>
internal static class DiagramDocument
{
    // Whose table fills a good part of a printed sheet.
    private const int ManyPoints = 20;

    private static readonly Columns<DiagramPart> s_part = new()
    {
        { "part", "part", p => p.Name },
        { "kind", "kind", p => p.Kind },
        { "from", "from", p => p.From },
        { "to", "to", p => p.To },
        { "colour", "colour", p => p.Colour, null, true },
        { "A", "currentA", p => p.Current },
    };

    public static Document Of(Bike bike, OperatingPoint point) =>
        new(
            CommonBlocks.TitleOf(bike, "Circuit"),
            $"In the setting '{point.Setting}' the source of {Figures.Volts(point.SupplyVoltage)} gives "
                + $"{Figures.Amperes(point.TotalCurrent)}.",
            Cautions.OfWork(bike),
            () =>
                [
                    new Heading("Points"),
                    CommonBlocks.Point.Table(point.Points) with { IsInColumns = true },
                    // The drawing begins a printed sheet: the one before it is not to hold a title alone.
                    .. point.Points.Length > ManyPoints ? [Drawn(bike, point)] : Array.Empty<Block>(),
                    new Heading("Parts"),
                    s_part.Table(PartsOf(bike, point), isMain: true),
                    .. point.Points.Length > ManyPoints ? [] : new Block[] { Drawn(bike, point) },
                ],
            json =>
            {
                json.Write("bike", bike.Name);
                json.Write("supplyVoltageV", point.SupplyVoltage);
                json.Write("setting", point.Setting);
                json.Write("totalCurrentA", point.TotalCurrent);
                json.Write("points", CommonBlocks.Point, point.Points);
                json.Write("parts", s_part, PartsOf(bike, point));
            }
        );

    private static PageOnly Drawn(Bike bike, OperatingPoint point) => new(() => [CircuitBlock.Of(bike, point)]);

    // Every part with its points and its current from the one to the other.
    private static IEnumerable<DiagramPart> PartsOf(Bike bike, OperatingPoint point)
    {
        var ends = new PartEnds(bike, point);
        return
        [
            .. point.Fuses.Select(f => new DiagramPart(
                f.Fuse.Name,
                "fuse",
                ends.From(f.Fuse),
                ends.To(f.Fuse),
                f.Current
            )),
            .. point.Contacts.Select(c => new DiagramPart(
                c.Contact.Switch,
                c.Closed ? "closed contact" : "open contact",
                c.Contact.From,
                c.Contact.To,
                c.Current
            )),
            .. point.Runs.Select(r => new DiagramPart(
                r.Run.Name,
                "run",
                r.Run.From,
                r.Run.To,
                r.Current,
                r.Run.Colour?.Code
            )),
            .. point.Lamps.Select(l => new DiagramPart(
                l.Lamp.Lamp,
                "lamp",
                ends.Feed(l.Lamp),
                ends.Return(l.Lamp),
                l.Current
            )),
        ];
    }

    private sealed record DiagramPart(
        string Name,
        string Kind,
        string From,
        string To,
        ElectricCurrent Current,
        string? Colour = null
    );
}
