using System.Collections.Immutable;

namespace Lighting.Calc.Harness;

/// <summary>Finds the known words nearest to a misspelt one.</summary>
internal static class NearestWords
{
    /// <summary>The closest words, at most three, closest first; empty when none is close.</summary>
    public static ImmutableArray<string> Of(string text, IEnumerable<string> words)
    {
        int furthest = text.Length <= 4 ? 1 : text.Length <= 8 ? 2 : 3;
        // Words whose lengths differ by more cannot be so near; most are ruled out by that alone.
        var close = words.Where(word => Math.Abs(word.Length - text.Length) <= furthest).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(word => (Word: word, Distance: Distance(text, word)))
            .Where(w => w.Distance <= furthest && w.Distance < Math.Max(text.Length, w.Word.Length))
            .OrderBy(w => w.Distance).ThenBy(w => w.Word, StringComparer.Ordinal)
            .ToList();
        return [.. close.Where(w => w.Distance == close[0].Distance).Take(3).Select(w => w.Word)];
    }

    /// <summary>Whether two different words look like one word misspelt: one edit apart, and not merely numbered apart.</summary>
    public static bool LookAlike(string left, string right) =>
        Math.Min(left.Length, right.Length) >= 3
        && Distance(left, right) == 1
        && !string.Equals(WithoutDigits(left), WithoutDigits(right), StringComparison.OrdinalIgnoreCase);

    /// <summary>Edits (insert, delete, replace, swap neighbours) from one word to the other, without case.</summary>
    /// <remarks>Optimal string alignment: the restricted Damerau-Levenshtein distance.</remarks>
    public static int Distance(string left, string right)
    {
        string a = left.ToLowerInvariant(), b = right.ToLowerInvariant();
        if (Math.Max(a.Length, b.Length) > 100)
            return string.Equals(a, b, StringComparison.Ordinal) ? 0 : 100;
        var cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    cost[i, j] = i + j;
                    continue;
                }

                int replace = cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                int best = Math.Min(replace, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    best = Math.Min(best, cost[i - 2, j - 2] + 1);
                cost[i, j] = best;
            }
        }

        return cost[a.Length, b.Length];
    }

    private static string WithoutDigits(string word) => string.Concat(word.Where(c => !char.IsDigit(c)));
}
