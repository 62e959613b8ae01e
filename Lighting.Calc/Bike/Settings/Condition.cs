using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.InteropServices;

namespace Lighting.Calc;

/// <summary>Condition on switches: <c>switch=position|position</c>, several joined by <c>;</c>, all of which must
/// hold.</summary>
/// <remarks>A part may have alternatives, of which one must hold: <c>ignition=on; front brake=on or rear
/// brake=on</c>.</remarks>
public sealed record Condition
{
    private const string Or = "or";
    private const string Form =
        "switch=position or switch=position|position, several joined by ';' where all must hold, by 'or' where one "
        + "must";

    private Condition(ImmutableArray<ImmutableArray<ConditionTerm>> parts)
    {
        Parts = parts;
        Terms = [.. parts.SelectMany(p => p)];
    }

    /// <summary>The condition that always holds (an empty cell).</summary>
    public static Condition Always { get; } = new([]);

    /// <summary>The parts, all of which must hold; a part holds if one of its alternatives does.</summary>
    internal ImmutableArray<ImmutableArray<ConditionTerm>> Parts { get; }

    /// <summary>Every switch that is named, with its positions: the alternatives of all parts in order.</summary>
    internal ImmutableArray<ConditionTerm> Terms { get; }

    /// <summary>Whether the condition holds in a setting. False for a switch that the setting does not have.</summary>
    /// <param name="setting">The setting.</param>
    public bool Holds(Setting setting)
    {
        foreach (ImmutableArray<ConditionTerm> part in Parts)
        {
            bool holds = false;
            foreach (ConditionTerm alternative in part)
                holds |= alternative.Holds(setting);
            if (!holds)
                return false;
        }

        return true;
    }

    /// <summary>Reads a condition.</summary>
    /// <param name="text">For instance <c>lights=low|high; brake=on</c>; empty means always.</param>
    /// <exception cref="FormatException">The text is not a condition; the message says what was expected.</exception>
    public static Condition Parse(string text) =>
        TryParse(text, out Condition condition, out string? expected)
            ? condition
            : throw new FormatException($"'{text}' is not a condition: expected {expected}.");

    /// <summary>Reads a condition.</summary>
    /// <param name="text">For instance <c>lights=low|high; brake=on</c>; empty or null means always.</param>
    /// <param name="condition">The condition; null if the text is none.</param>
    /// <returns>Whether the text is a condition.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out Condition? condition)
    {
        condition = TryParse(text, out Condition read, out _) ? read : null;
        return condition is not null;
    }

    /// <summary>The same with what was expected; the condition is then <see cref="Always"/>.</summary>
    internal static bool TryParse(string? text, out Condition condition, [NotNullWhen(false)] out string? expected)
    {
        condition = Always;
        expected = null;
        if (string.IsNullOrWhiteSpace(text))
            return true;
        var parts = ImmutableArray.CreateBuilder<ImmutableArray<ConditionTerm>>(1 + text.AsSpan().Count(';'));
        foreach (Range range in text.AsSpan().Split(';'))
        {
            var part = ImmutableArray.CreateBuilder<ConditionTerm>(1);
            foreach (string alternative in Alternatives(text[range]))
            {
                int equals = alternative.IndexOf('=');
                string name = equals < 0 ? "" : alternative[..equals].Trim();
                ImmutableArray<string> positions =
                    equals < 0 || alternative.IndexOf('=', equals + 1) >= 0
                        ? []
                        : Positions(alternative.AsSpan(equals + 1));
                if (name.Length == 0 || positions.IsEmpty)
                    expected = Form;
                else if (parts.Any(p => p.Length == 1 && Name.Equal(p[0].Switch, name)))
                    expected = $"the switch '{name}' once, with its positions joined by '|'";
                if (expected is not null)
                    return false;
                // One of its positions or another: the same as with '|'.
                if (part.FirstOrDefault(t => Name.Equal(t.Switch, name)) is { } same)
                    part[part.IndexOf(same)] = new ConditionTerm(
                        same.Switch,
                        [.. same.Positions.Union(positions, Name.Comparer)]
                    );
                else
                    part.Add(new ConditionTerm(name, positions));
            }

            parts.Add(part.DrainToImmutable());
        }

        condition = new Condition(parts.MoveToImmutable());
        return true;
    }

    /// <summary>Form in lists; empty for <see cref="Always"/>.</summary>
    public override string ToString() => string.Join("; ", Parts.Select(p => string.Join($" {Or} ", p)));

    // A switch may have "or" within its name; alone between blanks it is the word.
    private static IEnumerable<string> Alternatives(string part)
    {
        string[] words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        int start = 0;
        for (int i = 0; i <= words.Length; i++)
        {
            if (i < words.Length && !string.Equals(words[i], Or, StringComparison.OrdinalIgnoreCase))
                continue;
            yield return string.Join(' ', words[start..i]);
            start = i + 1;
        }
    }

    /// <summary>The positions of a term; empty if one of them is blank.</summary>
    private static ImmutableArray<string> Positions(ReadOnlySpan<char> text)
    {
        var positions = new string[1 + text.Count('|')];
        int count = 0;
        foreach (Range part in text.Split('|'))
        {
            ReadOnlySpan<char> position = text[part].Trim();
            if (position.IsEmpty)
                return [];
            positions[count++] = position.ToString();
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(positions);
    }

    /// <inheritdoc/>
    public bool Equals(Condition? other) => other is not null && Name.Equal(ToString(), other.ToString());

    /// <inheritdoc/>
    public override int GetHashCode() => Name.Comparer.GetHashCode(ToString());
}
