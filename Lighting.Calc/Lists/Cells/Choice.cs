namespace Lighting.Calc;

/// <summary>Joins words for a message: <c>a, b or c</c>.</summary>
internal static class Choice
{
    public static string Of(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} or {all[^1]}";
    }
}
