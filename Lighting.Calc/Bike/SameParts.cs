using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Equality of arrays by what they hold, for records that have them.</summary>
internal static class SameParts
{
    /// <summary>Whether two arrays hold equal parts in the same order.</summary>
    public static bool HoldsSame<T>(this ImmutableArray<T> left, ImmutableArray<T> right) =>
        left.IsDefault == right.IsDefault && left.AsSpan().SequenceEqual(right.AsSpan(), null);

    /// <summary>A hash that equal arrays share: of how many parts they hold and of the first.</summary>
    public static int HashOfParts<T>(this ImmutableArray<T> parts) =>
        parts.IsDefaultOrEmpty ? 0 : HashCode.Combine(parts.Length, parts[0]);
}
