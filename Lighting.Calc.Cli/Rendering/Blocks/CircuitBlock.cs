using Lighting.Calc.Cli.Rendering.Drawing;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A drawing of a circuit.</summary>
/// <param name="Title">What is drawn.</param>
/// <param name="Description">The same in words, for those who do not see it.</param>
/// <param name="Caption">How to read it, for those who do.</param>
/// <param name="Drawing">The drawing in one piece.</param>
/// <param name="Sheets">The drawing on sheets on which it is legible.</param>
internal sealed record CircuitBlock(
    string Title,
    string Description,
    string Caption,
    CircuitDrawing Drawing,
    IReadOnlyList<CircuitDrawing> Sheets
) : Block
{
    /// <summary>The drawing of a bike in one setting.</summary>
    public static CircuitBlock Of(Calc.Bike bike, Calc.OperatingPoint point)
    {
        var graph = CircuitGraph.Of(bike, point);
        IReadOnlyList<CircuitDrawing> sheets = CircuitSheets.Of(graph);
        string[] lit =
        [
            .. graph.Parts.Where(p => p is { IsLoad: true, IsLive: true }).Select(p => $"{p.Name} {p.Figures}"),
        ];
        return new CircuitBlock(
            $"Circuit in the setting {point.Setting}",
            $"{graph.SourceName} {graph.SourceFigures}; "
                + $"{(lit.Length == 0 ? "nothing draws current" : string.Join(", ", lit))}.",
            $"Strong lines carry current, a filled dot joins, lines that only cross do not. Volts are to "
                + $"'{Calc.Bike.BatteryMinus}'; the two earth signs are one point."
                + (
                    sheets.Count == 1
                        ? ""
                        : " A letter in a box with the number of a sheet: the conductor goes on there at the same "
                            + "letter."
                ),
            sheets.Count == 1 ? sheets[0] : CircuitLayout.Of(graph),
            sheets
        );
    }
}
