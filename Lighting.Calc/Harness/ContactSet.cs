namespace Lighting.Calc.Harness;

/// <summary>Some of a bike's switch contacts, by their places in the list.</summary>
internal readonly struct ContactSet : IEquatable<ContactSet>
{
    private readonly ulong[] _words;

    private ContactSet(ulong[] words) => _words = words;

    /// <summary>The contacts for which a test holds.</summary>
    /// <param name="count">Contacts of the bike.</param>
    /// <param name="has">Whether the contact of a place is in the set.</param>
    public static ContactSet Where(int count, Func<int, bool> has)
    {
        var words = new ulong[(count + 63) / 64];
        for (int i = 0; i < count; i++)
            if (has(i))
                words[i / 64] |= 1UL << (i % 64);
        return new ContactSet(words);
    }

    public bool Has(int contact) => (_words[contact / 64] >> (contact % 64) & 1) != 0;

    /// <summary>Whether two sets agree in the contacts of a third.</summary>
    public bool AgreesWith(ContactSet other, ContactSet within)
    {
        for (int i = 0; i < _words.Length; i++)
            if (((_words[i] ^ other._words[i]) & within._words[i]) != 0)
                return false;
        return true;
    }

    public bool Equals(ContactSet other) => _words.AsSpan().SequenceEqual(other._words);

    public override bool Equals(object? obj) => obj is ContactSet other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (ulong word in _words)
            hash.Add(word);
        return hash.ToHashCode();
    }
}
