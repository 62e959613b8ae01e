namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>A part between two points of the drawing.</summary>
/// <param name="Number">Its place among the parts.</param>
/// <param name="From">One point, by its number.</param>
/// <param name="To">The other.</param>
/// <param name="Symbol">Its symbol.</param>
/// <param name="Name">Its name.</param>
/// <param name="Figures">Its figures.</param>
/// <param name="IsLoad">Whether it is a lamp or another load.</param>
/// <param name="IsLive">Whether current flows in it.</param>
/// <param name="IsUnsuitable">Whether it does not suit; its name then begins with the sign for it.</param>
internal sealed record CircuitPart(
    int Number,
    int From,
    int To,
    SymbolKind Symbol,
    string Name,
    string Figures,
    bool IsLoad,
    bool IsLive,
    bool IsUnsuitable = false
)
{
    /// <summary>Begins the name of what does not suit.</summary>
    public const string Sign = "✖\u00A0";
}
