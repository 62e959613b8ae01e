namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The room a symbol takes about the line it stands on.</summary>
/// <param name="HalfWidth">Along the line, to each side of its middle.</param>
/// <param name="Above">Above the line.</param>
/// <param name="Below">Below the line.</param>
internal readonly record struct SymbolSize(double HalfWidth, double Above, double Below)
{
    public static SymbolSize Of(SymbolKind kind) =>
        kind switch
        {
            SymbolKind.Wire => new(0, 2, 2),
            SymbolKind.Fuse => new(13, 5, 5),
            SymbolKind.OpenContact => new(11, 10, 3),
            SymbolKind.ClosedContact => new(11, 3, 3),
            SymbolKind.Lamp => new(8, 8, 8),
            SymbolKind.Led => new(8, 14, 6),
            SymbolKind.LedWithResistor => new(22, 14, 6),
            SymbolKind.Resistor => new(13, 5, 5),
            SymbolKind.ConstantCurrent => new(8, 8, 8),
            SymbolKind.Battery or SymbolKind.BatteryReversed => new(9, 10, 10),
            SymbolKind.Coil => new(10, 10, 10),
            SymbolKind.Earth or SymbolKind.EarthLeft => new(10, 10, 10),
            _ => throw new InvalidOperationException($"Unknown symbol {kind}."),
        };
}
