using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Index of many words by spelling, for suggestions without comparing every pair.</summary>
/// <remarks>
/// Two words that are one edit apart share a word of one letter less, or one of them is that word: each is filed under
/// all of these, by their hashes (the symmetric delete method, W. Garbe; from memory). What is found under the same is
/// compared in full.
/// </remarks>
internal sealed class SpellingIndex
{
    private const ulong Base = 1_099_511_628_211;

    private readonly ImmutableArray<string> _words;
    private readonly Dictionary<ulong, List<int>> _byShape = [];

    public SpellingIndex(IEnumerable<string> words)
    {
        _words = [.. words.Distinct(Name.Comparer)];
        for (int i = 0; i < _words.Length; i++)
            foreach (ulong shape in Shapes(_words[i]))
            {
                if (!_byShape.TryGetValue(shape, out List<int>? filed))
                    _byShape.Add(shape, filed = []);
                filed.Add(i);
            }
    }

    /// <summary>The words that look like this one, other than itself, in their order.</summary>
    public ImmutableArray<string> Of(string word) =>
        [
            .. Shapes(word)
                .SelectMany(s => _byShape.TryGetValue(s, out List<int>? filed) ? filed : [])
                .Distinct()
                .Order()
                .Select(i => _words[i])
                .Where(w => SpellingSuggestions.LookAlike(w, word)),
        ];

    // Hashes of the word and of the word without each of its letters.
    private static HashSet<ulong> Shapes(string word)
    {
        string lower = word.ToLowerInvariant();
        var shapes = new HashSet<ulong>();
        if (lower.Length > SpellingSuggestions.LongestWord)
            return shapes;
        var power = new ulong[lower.Length + 1];
        power[0] = 1;
        ulong after = 0;
        for (int i = 0; i < lower.Length; i++)
        {
            power[i + 1] = unchecked(power[i] * Base);
            after = unchecked(after * Base + lower[i] + 1);
        }

        shapes.Add(after);
        ulong before = 0;
        for (int i = 0; i < lower.Length; i++)
        {
            ulong letter = lower[i] + 1ul,
                follow = power[lower.Length - 1 - i];
            after = unchecked(after - letter * follow);
            shapes.Add(unchecked(before * follow + after));
            before = unchecked(before * Base + letter);
        }

        return shapes;
    }
}
