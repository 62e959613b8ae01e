using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Lists;

/// <summary>Says why a lamp code is not known, and which codes come near it.</summary>
internal static class LampCodes
{
    /// <param name="text">The code as written.</param>
    /// <param name="codes">Every known code, filaments included.</param>
    public static TextProblem Explain(string text, IEnumerable<string> codes)
    {
        string[] known = [.. codes.Distinct(Name.Comparer)];
        string bare = text.Replace(" ", "", StringComparison.Ordinal);
        string[] filaments = [.. known.Where(c => c.Contains(' ', StringComparison.Ordinal) && Name.Equal(Lamp(c), bare))];
        if (filaments.Length > 0)
            return new TextProblem(text, "is a lamp of two filaments", $"name the filament: {Choice.Of(filaments.Select(OneLine.Quoted))}");
        string lamp = Lamp(text);
        string[] same = [.. known.Where(c => c.Contains(' ', StringComparison.Ordinal) && text.Contains(' ', StringComparison.Ordinal) && Name.Equal(Lamp(c), lamp))];
        ImmutableArray<string> nearest = same.Length > 0 ? [.. same] : NearestWords.Of(text, known);
        if (nearest.IsEmpty)
            nearest = NearestWords.Of(text, known.Select(Lamp));
        return new TextProblem(text, "is not a known lamp code", "expected a code of the lamp table, or no code and the lamp's volts and watts", nearest);
    }

    private static string Lamp(string code) => code.Split(' ')[0];
}
