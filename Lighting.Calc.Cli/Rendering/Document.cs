namespace Lighting.Calc.Cli.Rendering;

/// <summary>A result laid out for people: what text, CSV and HTML are rendered from. JSON is written from the result itself.</summary>
internal sealed record Document(string Title, string Verdict, IReadOnlyList<Block> Blocks);
