using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Lighting.Calc;

/// <summary>Insulation colour of a wire: one colour, a base with a tracer, or two colours of which neither is
/// said to be the tracer.</summary>
/// <remarks>
/// Codes of IEC 60757, tables/wire-colours.csv. A base and its tracer are joined by a slash, the base first:
/// <c>GN/RD</c> is not <c>RD/GN</c>. Two codes joined without a separator stand in the order of the standard's table,
/// such as <c>RDBU</c>, whichever of them is the tracer; only green and yellow is written <c>GNYE</c>. The standard
/// keeps those two for the protective conductor: a list states the colour of an existing wire, so other pairs with
/// them are accepted.
/// </remarks>
public sealed record WireColour
{
    private const string GreenAndYellow = "GNYE";
    private static readonly char[] s_separators = [' ', '/', '-', '+', ',', '&'];
    private static readonly ImmutableArray<(string Code, string Name)> s_single =
    [
        .. PublishedTable.Load("wire-colours").Read().Select(r => (r.Text("code"), r.Text("colour"))),
    ];

    private static readonly FrozenDictionary<string, string> s_codes = s_single
        .SelectMany(s => new[] { (Word: s.Code, s.Code), (Word: s.Name, s.Code) })
        .Concat([("gray", "GY"), ("purple", "VT"), ("slate", "GY")])
        .ToFrozenDictionary(w => w.Item1, w => w.Item2, Calc.Name.Comparer);

    private WireColour(string code, string description, string? @base, string? tracer) =>
        (Code, Description, Base, Tracer) = (code, description, @base, tracer);

    /// <summary>The code in capitals, such as <c>BK</c>, <c>GN/RD</c> or <c>RDBU</c>.</summary>
    public string Code { get; }

    /// <summary>The colours in words, such as <c>green with red tracer</c> or <c>red and blue</c>.</summary>
    public string Description { get; }

    /// <summary>Code of the only colour, or of the base; null where neither of two colours is said to be it.</summary>
    public string? Base { get; }

    /// <summary>Code of the tracer; null where there is none, or neither of two colours is said to be it.</summary>
    public string? Tracer { get; }

    /// <summary>The codes of single colours, in the order of the standard's table.</summary>
    internal static ImmutableArray<string> SingleCodes { get; } = [.. s_single.Select(s => s.Code)];

    /// <summary>Every colour: the single ones, the pairs as the standard joins them, and each base with each
    /// tracer.</summary>
    public static ImmutableArray<WireColour> All { get; } =
    [
        .. s_single.Select(s => new WireColour(s.Code, s.Name, s.Code, null)),
        .. s_single.SelectMany((a, i) => s_single.Skip(i + 1).Select(b => Pair(a, b))),
        .. s_single.SelectMany(a => s_single.Where(b => b != a).Select(b => Traced(a, b))),
    ];

    private static readonly FrozenDictionary<string, WireColour> s_byCode = All.ToFrozenDictionary(
        c => c.Code,
        Calc.Name.Comparer
    );

    /// <summary>Finds a colour by its code or by plain words, in capitals or not: <c>BK</c>, <c>black</c>,
    /// <c>GN/RD</c>, <c>green/red</c>, <c>green with red tracer</c>, <c>RDBU</c>, <c>red and blue</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="colour">The colour; null if the text is none.</param>
    public static bool TryFind(string? text, [NotNullWhen(true)] out WireColour? colour)
    {
        colour = null;
        return text is not null
            && (s_byCode.TryGetValue(text, out colour) || s_byCode.TryGetValue(Words(text), out colour));
    }

    /// <summary>The code.</summary>
    public override string ToString() => Code;

    /// <summary>Codes close to a text that is no colour: those of the colours it names, else those of similar
    /// spelling.</summary>
    internal static ImmutableArray<string> Nearest(string text)
    {
        string[] parts = Parts(text);
        if (parts is [{ Length: 4 } joined] && Meant(joined) is null)
            parts = [joined[..2], joined[2..]];
        string?[] singles = [.. parts.Where(p => !IsAnd(p)).Select(Meant).Distinct()];
        if (singles is [{ } one])
            return [one];
        if (singles is [{ } first, { } second])
            return Array.Exists(parts, IsAnd) ? [Joined(first, second)] : [Joined(first, second), $"{first}/{second}"];
        return SpellingSuggestions.Of(text, SingleCodes);
    }

    // The code that words mean; empty if they are not understood.
    private static string Words(string text)
    {
        string[] parts = Parts(text);
        string?[] codes = [.. parts.Where(p => !IsAnd(p)).Select(p => s_codes.GetValueOrDefault(p))];
        return codes switch
        {
            [{ } one] when parts.Length == 1 => one,
            [{ } first, { } second] when first != second => Array.Exists(parts, IsAnd)
                ? Joined(first, second)
                : $"{first}/{second}",
            _ => "",
        };
    }

    // The words of colours, and "and"; what says which is the tracer is said by the order.
    private static string[] Parts(string text) =>
        [
            .. text.Split(s_separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Where(p => p.ToLowerInvariant() is not ("with" or "tracer" or "stripe")),
        ];

    private static bool IsAnd(string part) => Calc.Name.Equal(part, "and");

    // The code joined as the standard orders them.
    private static string Joined(string first, string second) =>
        s_byCode.ContainsKey(first + second) ? first + second : second + first;

    private static string? Meant(string word) =>
        s_codes.TryGetValue(word, out string? code) ? code
        : SpellingSuggestions.Of(word, s_codes.Keys.Where(k => k.Length > 2)) is [var name] ? s_codes[name]
        : null;

    private static WireColour Pair((string Code, string Name) first, (string Code, string Name) second)
    {
        if (GreenAndYellow == second.Code + first.Code)
            (first, second) = (second, first);
        return new WireColour(first.Code + second.Code, $"{first.Name} and {second.Name}", null, null);
    }

    private static WireColour Traced((string Code, string Name) first, (string Code, string Name) second) =>
        new($"{first.Code}/{second.Code}", $"{first.Name} with {second.Name} tracer", first.Code, second.Code);
}
