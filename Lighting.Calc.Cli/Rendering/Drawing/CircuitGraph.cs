namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>What a drawing shows: points with their voltage and parts with their amps, in one setting.</summary>
/// <param name="Points">The points.</param>
/// <param name="Parts">The parts between them.</param>
/// <param name="Source">The live battery terminal, by its number.</param>
/// <param name="Earth">The terminal joined to the frame.</param>
/// <param name="SourceSymbol">The symbol of what feeds the lamps.</param>
/// <param name="SourceName">Its name.</param>
/// <param name="SourceFigures">Its figures.</param>
internal sealed record CircuitGraph(
    IReadOnlyList<CircuitPoint> Points,
    IReadOnlyList<CircuitPart> Parts,
    int Source,
    int Earth,
    SymbolKind SourceSymbol,
    string SourceName,
    string SourceFigures
)
{
    // What rounds to no hundredth of an ampere, such as what two earths exchange through a dark lamp, is not shown as a
    // live path.
    private const double LeastAmperes = 5e-3;

    public static CircuitGraph Of(Bike bike, OperatingPoint point, UnsuitableParts? unsuitable = null)
    {
        var numbers = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var points = new List<CircuitPoint>();
        foreach (NodeVoltage state in point.Points)
        {
            numbers.Add(state.Point, points.Count);
            points.Add(new CircuitPoint(state.Point, Figures.Volts(state.Voltage)));
        }

        var ends = new PartEnds(bike, point);
        UnsuitableParts bad = unsuitable ?? UnsuitableParts.None;
        List<CircuitPart> parts =
        [
            .. point.Fuses.Select(f =>
                Part(
                    ends.From(f.Fuse),
                    ends.To(f.Fuse),
                    SymbolKind.Fuse,
                    $"{f.Fuse.Name} {Figures.Rating(f.Fuse.Rating).Replace(' ', '\u00A0')}",
                    f.Current.Amperes,
                    isUnsuitable: bad.Fuses.Contains(f.Fuse.Name)
                )
            ),
            .. point.Contacts.Select(c =>
                Part(
                    c.Contact.From,
                    c.Contact.To,
                    c.Closed ? SymbolKind.ClosedContact : SymbolKind.OpenContact,
                    $"{c.Contact.Switch} {string.Join('|', c.Contact.ClosedIn)}",
                    c.Current.Amperes,
                    c.Closed ? null : "open"
                )
            ),
            .. point.Runs.Select(r =>
                Part(
                    r.Run.From,
                    r.Run.To,
                    SymbolKind.Wire,
                    r.Run.Colour is { } colour ? $"{r.Run.Name} {colour.Code}" : r.Run.Name,
                    r.Current.Amperes,
                    isUnsuitable: bad.Runs.Contains(r.Run.Name)
                )
            ),
            .. point.Lamps.Select(l =>
                Part(
                    ends.Feed(l.Lamp),
                    ends.Return(l.Lamp),
                    SymbolOf(l.Lamp.Specification.Type),
                    l.Lamp.Quantity == 1 ? l.Lamp.Lamp : $"{l.Lamp.Quantity} × {l.Lamp.Lamp}",
                    l.Current.Amperes,
                    IsLive(l.Current.Amperes) ? $"{Figures.Volts(l.Voltage)} {Figures.Amperes(l.Current)}" : "off",
                    isLoad: true,
                    isUnsuitable: bad.Lamps.Contains(l.Lamp.Lamp)
                )
            ),
        ];
        bool isDirect = bike.Lighting == LightingSupply.Direct;
        return new CircuitGraph(
            points,
            [.. parts.Select((p, i) => p with { Number = i })],
            numbers[bike.LivePoint],
            numbers[bike.EarthPoint],
            isDirect ? SymbolKind.Coil
                : bike.Earth == Calc.Earth.Negative ? SymbolKind.Battery
                : SymbolKind.BatteryReversed,
            isDirect ? "lighting coil" : "battery",
            $"{Figures.Volts(point.SupplyVoltage)} {Figures.Amperes(point.TotalCurrent)}"
        );

        CircuitPart Part(
            string from,
            string to,
            SymbolKind symbol,
            string name,
            double amperes,
            string? figures = null,
            bool isLoad = false,
            bool isUnsuitable = false
        ) =>
            new(
                0,
                numbers[from],
                numbers[to],
                symbol,
                isUnsuitable ? CircuitPart.Sign + name : name,
                figures ?? (IsLive(amperes) ? $"{Figures.Number(Math.Abs(amperes), 2)} A" : "0 A"),
                isLoad,
                IsLive(amperes),
                isUnsuitable
            );
    }

    private static bool IsLive(double amperes) => Math.Abs(amperes) > LeastAmperes;

    private static SymbolKind SymbolOf(LampType type) =>
        type switch
        {
            LampType.Filament or LampType.Halogen => SymbolKind.Lamp,
            LampType.Led => SymbolKind.Led,
            LampType.LedResistor => SymbolKind.LedWithResistor,
            LampType.Fixed => SymbolKind.ConstantCurrent,
            LampType.Resistor => SymbolKind.Resistor,
            _ => throw new InvalidOperationException($"Unknown type {type}."),
        };
}
