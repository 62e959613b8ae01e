using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Comparison of names in a bike's lists: ordinal, ignoring case.</summary>
internal static class Name
{
    public static StringComparer Comparer => StringComparer.OrdinalIgnoreCase;

    public static bool Equal(string left, string right) => Comparer.Equals(left, right);

    public static bool IsAmong(ImmutableArray<string> names, string name)
    {
        foreach (string one in names)
            if (Equal(one, name))
                return true;
        return false;
    }
}
