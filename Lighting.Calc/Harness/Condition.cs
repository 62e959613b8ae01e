using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.InteropServices;

namespace Lighting.Calc.Harness;

/// <summary>When something holds: <c>switch=position|position</c>, several joined by <c>;</c>, all of which must hold.</summary>
public sealed record Condition
{
    private Condition(ImmutableArray<ConditionTerm> terms) => Terms = terms;

    /// <summary>The condition that always holds (an empty cell).</summary>
    public static Condition Always { get; } = new([]);

    /// <summary>The parts, all of which must hold.</summary>
    public ImmutableArray<ConditionTerm> Terms { get; }

    /// <summary>Whether the condition holds in a setting. A switch that the setting does not have never satisfies it.</summary>
    /// <param name="setting">The setting.</param>
    public bool Holds(Setting setting)
    {
        foreach (ConditionTerm term in Terms)
        {
            string? position = setting.PositionOf(term.Switch);
            if (position is null || !term.Positions.Contains(position, Name.Comparer))
                return false;
        }

        return true;
    }

    /// <summary>Reads a condition from text.</summary>
    /// <param name="text">For instance <c>lights=low|high; brake=on</c>; empty means always.</param>
    /// <exception cref="FormatException">The text is not a condition; the message says what was expected.</exception>
    public static Condition Parse(string text) =>
        TryParse(text, out Condition condition, out string? expected) ? condition : throw new FormatException($"'{text}' is not a condition: expected {expected}.");

    /// <summary>Reads a condition from a person's text.</summary>
    /// <param name="text">For instance <c>lights=low|high; brake=on</c>; empty means always.</param>
    /// <param name="condition">The condition, or <see cref="Always"/> when the text is not one.</param>
    /// <param name="expected">What was expected; null when the text is a condition.</param>
    /// <returns>Whether the text is a condition.</returns>
    public static bool TryParse(string text, out Condition condition, [NotNullWhen(false)] out string? expected)
    {
        condition = Always;
        expected = null;
        if (string.IsNullOrWhiteSpace(text))
            return true;
        var terms = ImmutableArray.CreateBuilder<ConditionTerm>(1 + text.AsSpan().Count(';'));
        foreach (Range part in text.AsSpan().Split(';'))
        {
            ReadOnlySpan<char> term = text.AsSpan()[part];
            int equals = term.IndexOf('=');
            string name = equals < 0 ? "" : term[..equals].Trim().ToString();
            ImmutableArray<string> positions = equals < 0 || term[(equals + 1)..].Contains('=') ? [] : Positions(term[(equals + 1)..]);
            if (name.Length == 0 || positions.IsEmpty)
            {
                expected = "switch=position or switch=position|position, several joined by ';'";
                return false;
            }

            foreach (ConditionTerm before in terms)
            {
                if (!Name.Equal(before.Switch, name))
                    continue;
                expected = $"the switch '{name}' once, with its positions joined by '|'";
                return false;
            }

            terms.Add(new ConditionTerm(name, positions));
        }

        condition = new Condition(terms.MoveToImmutable());
        return true;
    }

    /// <summary>The form lists use; empty for <see cref="Always"/>.</summary>
    public override string ToString() => string.Join("; ", Terms);

    /// <summary>The positions of a term; empty when one of them is blank.</summary>
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
