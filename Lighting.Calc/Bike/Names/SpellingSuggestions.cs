using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Finds the known words nearest to a misspelt one.</summary>
internal static class SpellingSuggestions
{
    /// <summary>Longer words are only the same or not.</summary>
    public const int LongestWord = 100;

    /// <summary>The closest words, at most three, closest first; empty if none is close.</summary>
    public static ImmutableArray<string> Of(string text, IEnumerable<string> words)
    {
        int furthest =
            text.Length <= 4 ? 1
            : text.Length <= 8 ? 2
            : 3;
        // Words whose lengths differ by more cannot be so near; most are ruled out by that alone.
        var close = words
            .Where(word => Math.Abs(word.Length - text.Length) <= furthest)
            .Select(word => (Word: word, Distance: Distance(text, word, furthest)))
            .Where(w => w.Distance <= furthest && w.Distance < Math.Max(text.Length, w.Word.Length))
            .DistinctBy(w => w.Word, StringComparer.OrdinalIgnoreCase)
            .OrderBy(w => w.Distance)
            .ThenBy(w => w.Word, StringComparer.Ordinal)
            .ToList();
        return [.. close.Where(w => w.Distance == close[0].Distance).Take(3).Select(w => w.Word)];
    }

    /// <summary>The question "did you mean …?" for words already in quotes.</summary>
    public static string Question(IEnumerable<string> quoted) => $"did you mean {string.Join(" or ", quoted)}?";

    /// <summary>Whether two different words look like one word misspelt: one edit apart, and not merely numbered
    /// apart.</summary>
    public static bool LookAlike(string left, string right) =>
        Math.Min(left.Length, right.Length) >= 3
        && Distance(left, right, most: 1) == 1
        && !string.Equals(WithoutDigits(left), WithoutDigits(right), StringComparison.OrdinalIgnoreCase);

    /// <summary>Edits (insert, delete, replace, swap neighbours) from one word to the other, without case.</summary>
    /// <remarks>Optimal string alignment: the restricted Damerau-Levenshtein distance.</remarks>
    /// <param name="left">A word.</param>
    /// <param name="right">Another.</param>
    /// <param name="most">More edits than these need not be counted: any greater number may be returned for
    /// them.</param>
    public static int Distance(string left, string right, int most = int.MaxValue)
    {
        if (Math.Max(left.Length, right.Length) > LongestWord)
            return string.Equals(left.ToLowerInvariant(), right.ToLowerInvariant(), StringComparison.Ordinal)
                ? 0
                : LongestWord;
        Span<char> a = stackalloc char[left.Length],
            b = stackalloc char[right.Length];
        left.AsSpan().ToLowerInvariant(a);
        right.AsSpan().ToLowerInvariant(b);
        // The costs of the first letters of the one to all starts of the other; of one letter less; of two less.
        Span<int> cost = stackalloc int[b.Length + 1],
            one = stackalloc int[b.Length + 1],
            two = stackalloc int[b.Length + 1];
        int least = 0;
        for (int i = 0; i <= a.Length; i++)
        {
            Span<int> oldest = two;
            two = one;
            one = cost;
            cost = oldest;
            int leastBefore = least;
            least = cost[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                if (i == 0)
                {
                    cost[j] = j;
                    continue;
                }

                int best = Math.Min(one[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1), Math.Min(one[j], cost[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    best = Math.Min(best, two[j - 2] + 1);
                cost[j] = best;
                least = Math.Min(least, best);
            }

            // Whatever follows comes from these two rows, and costs no less.
            if (least > most && leastBefore > most)
                return least;
        }

        return cost[b.Length];
    }

    private static string WithoutDigits(string word) => string.Concat(word.Where(c => !char.IsDigit(c)));
}
