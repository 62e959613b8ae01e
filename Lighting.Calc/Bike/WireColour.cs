using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Lighting.Calc;

/// <summary>Insulation colour of a wire by letter code: one colour or two.</summary>
/// <remarks>
/// Codes of IEC 60757, tables/wire-colours.csv. Two colours are joined without a separator in the order of the
/// standard's table, such as <c>RDBU</c>, whichever of them is the stripe; only green and yellow is written
/// <c>GNYE</c>. The standard keeps those two for the protective conductor: a list states the colour of an existing
/// wire, so other pairs with them are accepted.
/// </remarks>
public sealed record WireColour
{
    private const string GreenAndYellow = "GNYE";
    private static readonly char[] s_separators = [' ', '/', '-', '+', ',', '&'];
    private static readonly ImmutableArray<(string Code, string Name)> s_single =
    [
        .. PublishedTable.Load("wire-colours").Read().Select(r => (r.Text("code"), r.Text("colour"))),
    ];

    private WireColour(string code, string description) => (Code, Description) = (code, description);

    /// <summary>The code in capitals, such as <c>BK</c> or <c>RDBU</c>.</summary>
    public string Code { get; }

    /// <summary>The colours in words, such as <c>red and blue</c>.</summary>
    public string Description { get; }

    /// <summary>The codes of single colours, in the order of the standard's table.</summary>
    internal static ImmutableArray<string> SingleCodes { get; } = [.. s_single.Select(s => s.Code)];

    /// <summary>Every colour: the single ones, then the pairs.</summary>
    public static ImmutableArray<WireColour> All { get; } =
    [
        .. s_single.Select(s => new WireColour(s.Code, s.Name)),
        .. s_single.SelectMany((a, i) => s_single.Skip(i + 1).Select(b => Pair(a, b))),
    ];

    /// <summary>Finds a colour by its code, in capitals or not.</summary>
    /// <param name="code">The code.</param>
    /// <param name="colour">The colour; null if the text is not a code.</param>
    public static bool TryFind(string? code, [NotNullWhen(true)] out WireColour? colour)
    {
        colour = All.FirstOrDefault(c => string.Equals(c.Code, code, StringComparison.OrdinalIgnoreCase));
        return colour is not null;
    }

    /// <summary>The code.</summary>
    public override string ToString() => Code;

    /// <summary>Codes close to a text that is not a code: those of the colours it names, else those of similar
    /// spelling.</summary>
    internal static ImmutableArray<string> Nearest(string text)
    {
        string[] parts = text.Split(
            s_separators,
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        if (parts is [{ Length: 4 } joined] && Single(joined) is null)
            parts = [joined[..2], joined[2..]];
        string?[] singles =
        [
            .. parts.Where(p => !string.Equals(p, "and", StringComparison.OrdinalIgnoreCase)).Select(Single).Distinct(),
        ];
        if (
            singles.Length is 1 or 2
            && singles.All(s => s is not null)
            && All.FirstOrDefault(c =>
                c.Code == string.Concat(singles) || singles.Length == 2 && c.Code == singles[1] + singles[0]
            )
                is { } named
        )
            return [named.Code];
        return SpellingSuggestions.Of(text, All.Select(c => c.Code));
    }

    private static string? Single(string word)
    {
        if (
            s_single.FirstOrDefault(s =>
                string.Equals(s.Code, word, StringComparison.OrdinalIgnoreCase)
                || string.Equals(s.Name, word, StringComparison.OrdinalIgnoreCase)
            ) is
            { Code: { } code }
        )
            return code;
        return SpellingSuggestions.Of(word, s_single.Select(s => s.Name)) is [var name]
            ? s_single.First(s => s.Name == name).Code
            : null;
    }

    private static WireColour Pair((string Code, string Name) first, (string Code, string Name) second)
    {
        if (GreenAndYellow == second.Code + first.Code)
            (first, second) = (second, first);
        return new WireColour(first.Code + second.Code, $"{first.Name} and {second.Name}");
    }
}
