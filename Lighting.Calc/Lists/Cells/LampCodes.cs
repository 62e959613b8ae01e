using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reason why a lamp code is unknown, and similar codes.</summary>
internal static class LampCodes
{
    private static readonly ImmutableArray<string> Codes = [.. LampTable.All.Select(l => l.Code).Concat(LedClassTable.Codes).Distinct(Name.Comparer)];

    // The codes that end in the name of a filament or function, by the lamp before it.
    private static readonly ILookup<string, string> Filaments = Codes.Where(c => c.Contains(' ', StringComparison.Ordinal)).ToLookup(Lamp, Name.Comparer);
    private static readonly ImmutableArray<string> LampNames = [.. Codes.Select(Lamp).Distinct(Name.Comparer)];

    /// <param name="text">The code as written.</param>
    public static TextProblem Explain(string text)
    {
        string bare = text.Replace(" ", "", StringComparison.Ordinal);
        string[] filaments = [.. Filaments[bare]];
        if (filaments.Length > 0)
            return new TextProblem(text, "is a lamp of two filaments", $"name the filament: {Choice.Of(filaments.Select(OneLine.Quoted))}");
        string[] same = text.Contains(' ', StringComparison.Ordinal) ? [.. Filaments[Lamp(text)]] : [];
        ImmutableArray<string> nearest = same.Length > 0 ? [.. same] : SpellingSuggestions.Of(text, Codes);
        if (nearest.IsEmpty)
            nearest = SpellingSuggestions.Of(text, LampNames);
        return new TextProblem(text, "is not a known lamp code", "expected a code of the lamp table, or no code but 'volts' and 'watts'", nearest);
    }

    private static string Lamp(string code) => code.Split(' ')[0];
}
