namespace Lighting.Calc;

/// <summary>The words that people use for lamps and how they look, beside those of the lists.</summary>
internal static class PeopleWords
{
    // Longer phrases first, so that "not working" is not taken for "working".
    private static readonly (string Phrase, Brightness Seen)[] s_looks =
    [
        .. new (string, Brightness)[]
        {
            ("dark", Brightness.Dark),
            ("out", Brightness.Dark),
            ("off", Brightness.Dark),
            ("dead", Brightness.Dark),
            ("not working", Brightness.Dark),
            ("does not work", Brightness.Dark),
            ("doesn't work", Brightness.Dark),
            ("not lit", Brightness.Dark),
            ("do not work", Brightness.Dark),
            ("don't work", Brightness.Dark),
            ("dim", Brightness.Dim),
            ("weak", Brightness.Dim),
            ("faint", Brightness.Dim),
            ("flickers", Brightness.Dim),
            ("flickering", Brightness.Dim),
            ("flicker", Brightness.Dim),
            ("good", Brightness.Normal),
            ("lit", Brightness.Normal),
            ("ok", Brightness.Normal),
            ("on", Brightness.Normal),
            ("fine", Brightness.Normal),
            ("works", Brightness.Normal),
            ("working", Brightness.Normal),
            ("normal", Brightness.Normal),
            ("bright", Brightness.Bright),
            ("too bright", Brightness.Bright),
        }.OrderByDescending(l => l.Item1.Length),
    ];

    private static readonly string[] s_nothing =
    [
        "nothing works",
        "nothing lights",
        "all dark",
        "everything dark",
        "everything is dead",
        "all dead",
    ];

    private static readonly (string Said, string Listed)[] s_lamps =
    [
        ("turn signal lamps", "indicators"),
        ("turn signal lights", "indicators"),
        ("turn signals", "indicators"),
        ("turn signal", "indicators"),
        ("winkers", "indicators"),
        ("blinkers", "indicators"),
        ("flashers", "indicators"),
        ("headlight", "headlamp"),
        ("head light", "headlamp"),
        ("brake light", "stop lamp"),
        ("brake lamp", "stop lamp"),
        ("stop light", "stop lamp"),
        ("rear light", "tail lamp"),
        ("taillight", "tail lamp"),
        ("tail light", "tail lamp"),
        ("sidelight", "pilot lamp"),
        ("dash lights", "instruments"),
        ("instrument lights", "instruments"),
        ("horn", "horn"),
    ];

    /// <summary>Whether a name is that of a horn, which has no filament.</summary>
    public static bool NamesHorn(string name) =>
        name.Split(' ').Any(w => Name.Equal(w, "horn") || Name.Equal(w, "horns"));

    /// <summary>Whether a text says that no lamp works.</summary>
    public static bool IsNothing(string text) => s_nothing.Contains(text.Trim(), Name.Comparer);

    /// <summary>How a lamp looks, in any of the words; null if it is none of them.</summary>
    public static Brightness? Look(string word)
    {
        foreach ((string phrase, Brightness seen) in s_looks)
            if (Name.Equal(phrase, word.Trim()))
                return seen;
        return null;
    }

    /// <summary>How watched lamps are while a part is moved; null if it is none of the words.</summary>
    public static Brightness? Wiggle(string word) =>
        word.Trim().ToLowerInvariant() switch
        {
            "flickers" or "flicker" or "flickering" or "changes" or "yes" => Brightness.Dim,
            "steady" or "no change" or "nothing" or "no" => Brightness.Normal,
            _ => null,
        };

    /// <summary>A lamp and how it looks, of a text that ends in one of the words; null if it does not.</summary>
    public static (string Lamp, Brightness Seen)? Observation(string text)
    {
        string trimmed = text.Trim();
        foreach ((string phrase, Brightness seen) in s_looks)
            if (trimmed.EndsWith(" " + phrase, StringComparison.OrdinalIgnoreCase))
                return (Without(trimmed[..^phrase.Length].Trim()), seen);
        return null;
    }

    /// <summary>The name that lists have for what people say; the same text if there is no other.</summary>
    public static string Lamp(string said)
    {
        foreach ((string word, string listed) in s_lamps)
        {
            int at = said.IndexOf(word, StringComparison.OrdinalIgnoreCase);
            if (at >= 0)
                return (said[..at] + listed + said[(at + word.Length)..]).Trim();
        }

        return said;
    }

    // "the tail lamp is" is the tail lamp.
    private static string Without(string lamp)
    {
        if (lamp.StartsWith("the ", StringComparison.OrdinalIgnoreCase))
            lamp = lamp[4..];
        foreach (string verb in new[] { " is", " are", " looks", " look" })
            if (lamp.EndsWith(verb, StringComparison.OrdinalIgnoreCase))
                return lamp[..^verb.Length].Trim();
        return lamp.Trim();
    }
}
