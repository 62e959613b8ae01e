using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A result in every form: text, CSV and HTML are rendered from its blocks.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Verdict">What it comes to.</param>
/// <param name="Blocks">Lays it out for people.</param>
/// <param name="Json">Writes its JSON members.</param>
internal sealed record Document(string Title, string Verdict, Func<IEnumerable<Block>> Blocks, Action<Utf8JsonWriter> Json);
