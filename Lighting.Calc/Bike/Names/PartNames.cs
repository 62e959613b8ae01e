using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Finds parts by the names that the lists give them.</summary>
internal static class PartNames
{
    /// <summary>The place of a part among others.</summary>
    /// <exception cref="ArgumentException">None has that name; the message suggests the nearest.</exception>
    public static int PlaceOf<T>(
        string name,
        ImmutableArray<T> parts,
        Func<T, string> nameOf,
        string noun,
        string parameter
    )
    {
        ArgumentNullException.ThrowIfNull(name, parameter);
        for (int i = 0; i < parts.Length; i++)
            if (Name.Equal(nameOf(parts[i]), name))
                return i;
        ImmutableArray<string> nearest = SpellingSuggestions.Of(name, parts.Select(nameOf));
        string question = nearest.IsEmpty ? "" : $" {SpellingSuggestions.Question(nearest.Select(OneLine.Quoted))}";
        throw new ArgumentException($"The bike has no {noun} {OneLine.Quoted(name)}.{question}", parameter);
    }
}
