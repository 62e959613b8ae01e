using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>diagram</c> gives: the drawing, and what it shows as tables.</summary>
internal static class DiagramDocument
{
    public static Document Of(Bike bike, OperatingPoint point) => new(
        CommonBlocks.TitleOf(bike, "Circuit"),
        $"In the setting '{point.Setting}' the source of {Figures.Volts(point.SupplyVoltage)} gives {Figures.Amperes(point.TotalCurrent)}.",
        [
            new PageOnly(CircuitBlock.Of(bike, point)),
            new Heading("Points"),
            new Table(
                [new("point", "point"), new("volts", "voltageV", true)],
                [.. point.Points.Select(p => (IReadOnlyList<Cell>)[p.Point, Figures.Cell(p.Voltage)])]),
            new Heading("Parts"),
            new Table(
                [new("part", "part"), new("kind", "kind"), new("from", "from"), new("to", "to"), new("colour", "colour"), new("amps", "currentA", true)],
                [.. PartsOf(bike, point).Select(p => (IReadOnlyList<Cell>)[p.Name, p.Kind, p.From, p.To, p.Colour ?? "", Figures.Cell(p.Amperes, 2)])],
                IsMain: true),
            CommonBlocks.Safety,
        ]);

    /// <summary>Every part with its points and its amps from the one to the other.</summary>
    public static IEnumerable<DiagramPart> PartsOf(Bike bike, OperatingPoint point)
    {
        var ends = new PartEnds(bike, point);
        return
        [
            .. point.Fuses.Select(f => new DiagramPart(f.Fuse.Name, "fuse", ends.From(f.Fuse), ends.To(f.Fuse), f.Current.Amperes)),
            .. point.Contacts.Select(c => new DiagramPart(c.Contact.Switch, c.Closed ? "closed contact" : "open contact", c.Contact.From, c.Contact.To, c.Current.Amperes)),
            .. point.Runs.Select(r => new DiagramPart(r.Run.Name, "run", r.Run.From, r.Run.To, r.Current.Amperes, r.Run.Colour?.Code)),
            .. point.Lamps.Select(l => new DiagramPart(l.Lamp.Lamp, "lamp", ends.Feed(l.Lamp), ends.Return(l.Lamp), l.Current.Amperes)),
        ];
    }
}

/// <summary>A part of a circuit as its table and its JSON show it.</summary>
internal sealed record DiagramPart(string Name, string Kind, string From, string To, double Amperes, string? Colour = null);
