namespace Lighting.Calc;

/// <summary>How the names in a bike's lists compare: ordinal, without case.</summary>
internal static class Name
{
    public static StringComparer Comparer => StringComparer.OrdinalIgnoreCase;

    public static bool Equal(string left, string right) => Comparer.Equals(left, right);
}
