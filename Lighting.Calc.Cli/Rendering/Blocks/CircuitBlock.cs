using Lighting.Calc.Cli.Rendering.Drawing;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A drawing of a circuit.</summary>
/// <param name="Title">What is drawn.</param>
/// <param name="Description">The same in words, for those who do not see it.</param>
/// <param name="Drawing">The drawing in one piece.</param>
internal sealed record CircuitBlock(string Title, string Description, CircuitDrawing Drawing) : Block
{
    /// <summary>The drawing on sheets on which it is legible, which takes a while to find: only a page needs
    /// them.</summary>
    public IReadOnlyList<CircuitDrawing> Sheets => LazySheets.Value;

    /// <summary>How to read it, for those who see it.</summary>
    public string Caption =>
        (HasUnsuitable ? $"{CircuitPart.Sign.TrimEnd()} does not suit. " : "")
        + $"Strong lines carry current, a filled dot joins, lines that only cross do not. Volts are to "
        + $"'{Calc.Bike.BatteryMinus}'; the two earth signs are one point."
        + (
            Sheets.Count == 1
                ? ""
                : " A letter in a box with the number of a sheet: the conductor goes on there at the same letter."
        );

    private Lazy<IReadOnlyList<CircuitDrawing>> LazySheets { get; init; } = new([]);

    private bool HasUnsuitable { get; init; }

    /// <summary>The same point by point, from the source on, where a screen is too narrow for a drawing.</summary>
    public IReadOnlyList<ListedPoint> Points { get; private init; } = [];

    /// <summary>The drawing of a bike in one setting.</summary>
    public static CircuitBlock Of(
        Calc.Bike bike,
        Calc.OperatingPoint point,
        UnsuitableParts? unsuitable = null
    )
    {
        var graph = CircuitGraph.Of(bike, point, unsuitable);
        string[] lit =
        [
            .. graph.Parts.Where(p => p is { IsLoad: true, IsLive: true }).Select(p => $"{p.Name} {p.Figures}"),
        ];
        return new CircuitBlock(
            $"Circuit in the setting {point.Setting}",
            $"{graph.SourceName} {graph.SourceFigures}; "
                + $"{(lit.Length == 0 ? "nothing draws current" : string.Join(", ", lit))}.",
            CircuitLayout.Of(graph)
        )
        {
            LazySheets = new Lazy<IReadOnlyList<CircuitDrawing>>(() => CircuitSheets.Of(graph)),
            HasUnsuitable = graph.Parts.Any(p => p.IsUnsuitable),
            Points = [.. Listed(graph)],
        };
    }

    // Breadth first from the source; each part stands at the point that comes first.
    private static IEnumerable<ListedPoint> Listed(CircuitGraph graph)
    {
        var order = new List<int> { graph.Source };
        var seen = new HashSet<int> { graph.Source };
        for (int next = 0; next < order.Count || seen.Count < graph.Points.Count; next++)
        {
            if (next == order.Count)
                Visit(Enumerable.Range(0, graph.Points.Count).First(p => !seen.Contains(p)));
            foreach (CircuitPart part in PartsAt(order[next]).Where(p => Other(p, order[next]) != graph.Earth))
                Visit(Other(part, order[next]));
        }

        var told = new HashSet<int>();
        foreach (int point in order)
        {
            yield return new ListedPoint(
                graph.Points[point].Name,
                graph.Points[point].Figures,
                [
                    .. PartsAt(point)
                        .Where(p => told.Add(p.Number))
                        .Select(p => $"{p.Name}, {p.Figures} → {graph.Points[Other(p, point)].Name}"),
                ]
            );
        }

        void Visit(int point)
        {
            if (seen.Add(point))
                order.Add(point);
        }

        IEnumerable<CircuitPart> PartsAt(int point) => graph.Parts.Where(p => p.From == point || p.To == point);

        static int Other(CircuitPart part, int point) => part.From == point ? part.To : part.From;
    }
}

/// <summary>A point of a circuit with the parts that lead on from it.</summary>
/// <param name="Point">Its name.</param>
/// <param name="Figures">Its voltage.</param>
/// <param name="Parts">Each part with its figures and where it leads.</param>
internal sealed record ListedPoint(string Point, string Figures, IReadOnlyList<string> Parts);
