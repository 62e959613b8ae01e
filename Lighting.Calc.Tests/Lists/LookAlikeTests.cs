namespace Lighting.Calc.Tests.Lists;

public class LookAlikeTests
{
    // Against comparing each with each: short words of few letters, so that many are one edit apart.
    [Fact]
    public void The_same_words_are_found_as_by_comparing_each_with_each()
    {
        var random = new Random(1);
        string[] words =
        [
            .. Enumerable
                .Range(0, 400)
                .Select(_ =>
                    string.Concat(Enumerable.Range(0, random.Next(1, 7)).Select(_ => "abCİß1 "[random.Next(7)]))
                ),
        ];
        var looks = new SpellingIndex(words);
        int found = 0;
        foreach (string word in words)
        {
            string[] each = [.. words.Distinct(Name.Comparer).Where(w => SpellingSuggestions.LookAlike(w, word))];
            Assert.Equal(each, looks.Of(word));
            found += each.Length;
        }

        Assert.True(found > 300, $"{found}");
    }

    [Fact]
    public void Words_longer_than_any_name_are_not_compared()
    {
        string word = new('x', 101);
        Assert.Empty(new SpellingIndex([word, word + "y"]).Of(word));
    }
}
