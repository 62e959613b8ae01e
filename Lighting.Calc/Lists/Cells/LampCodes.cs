using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reason why a lamp code is unknown, and similar codes.</summary>
internal static class LampCodes
{
    private static readonly ImmutableArray<string> s_codes =
    [
        .. LampTable.All.Select(l => l.Code).Concat(LedClassTable.Codes).Distinct(Name.Comparer),
    ];

    // The codes that end in the name of a filament or function, by the lamp before it.
    private static readonly ILookup<string, string> s_filaments = s_codes
        .Where(c => c.Contains(' ', StringComparison.Ordinal))
        .ToLookup(Lamp, Name.Comparer);
    private static readonly ImmutableArray<string> s_lampNames = [.. s_codes.Select(Lamp).Distinct(Name.Comparer)];

    /// <param name="text">The code as written.</param>
    public static TextProblem Explain(string text)
    {
        string bare = text.Replace(" ", "", StringComparison.Ordinal);
        string[] filaments = [.. s_filaments[bare]];
        if (filaments.Length > 0)
            return new TextProblem(
                text,
                "is a lamp of two filaments",
                $"name the filament: {Choice.Of(filaments.Select(OneLine.Quoted))}"
            );
        string[] same = text.Contains(' ', StringComparison.Ordinal) ? [.. s_filaments[Lamp(text)]] : [];
        ImmutableArray<string> nearest = same.Length > 0 ? [.. same] : SpellingSuggestions.Of(text, s_codes);
        if (nearest.IsEmpty)
            nearest = SpellingSuggestions.Of(text, s_lampNames);
        return new TextProblem(
            text,
            "is not a known lamp code",
            "expected a code of the lamp table, or no code but 'volts' and 'watts'",
            nearest
        );
    }

    private static string Lamp(string code) => code.Split(' ')[0];
}
