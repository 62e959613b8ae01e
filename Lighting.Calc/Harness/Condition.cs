using System.Collections.Immutable;

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
    /// <param name="expected">What was expected, when the text is not a condition.</param>
    /// <returns>Whether the text is a condition.</returns>
    public static bool TryParse(string text, out Condition condition, out string? expected)
    {
        condition = Always;
        expected = null;
        if (string.IsNullOrWhiteSpace(text))
            return true;
        var terms = ImmutableArray.CreateBuilder<ConditionTerm>();
        foreach (string part in text.Split(';', StringSplitOptions.TrimEntries))
        {
            string[] sides = part.Split('=', StringSplitOptions.TrimEntries);
            string[] positions = sides.Length == 2 ? sides[1].Split('|', StringSplitOptions.TrimEntries) : [];
            if (sides.Length != 2 || sides[0].Length == 0 || positions.Any(p => p.Length == 0))
            {
                expected = "switch=position or switch=position|position, several joined by ';'";
                return false;
            }

            if (terms.Any(t => Name.Equal(t.Switch, sides[0])))
            {
                expected = $"the switch '{sides[0]}' once, with its positions joined by '|'";
                return false;
            }

            terms.Add(new ConditionTerm(sides[0], [.. positions]));
        }

        condition = new Condition(terms.ToImmutable());
        return true;
    }

    /// <summary>The form lists use; empty for <see cref="Always"/>.</summary>
    public override string ToString() => string.Join("; ", Terms);

    /// <inheritdoc/>
    public bool Equals(Condition? other) => other is not null && Name.Equal(ToString(), other.ToString());

    /// <inheritdoc/>
    public override int GetHashCode() => Name.Comparer.GetHashCode(ToString());
}
