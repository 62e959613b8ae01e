namespace Lighting.Calc;

/// <summary>Some of a bike's switch contacts, by their places in the list.</summary>
internal readonly struct ContactSet : IEquatable<ContactSet>
{
    private readonly ulong _first;

    // Those past the 64th, which few bikes have.
    private readonly ulong[] _rest;

    private ContactSet(ulong first, ulong[] rest) => (_first, _rest) = (first, rest);

    /// <summary>The contacts for which a test holds.</summary>
    /// <param name="count">Contacts of the bike.</param>
    /// <param name="has">Whether the contact of a place is in the set.</param>
    public static ContactSet Where(int count, Func<int, bool> has)
    {
        ulong first = 0;
        ulong[] rest = count > 64 ? new ulong[(count - 1) / 64] : [];
        for (int i = 0; i < count; i++)
        {
            if (!has(i))
                continue;
            if (i < 64)
                first |= 1UL << i;
            else
                rest[i / 64 - 1] |= 1UL << (i % 64);
        }

        return new ContactSet(first, rest);
    }

    public bool Has(int contact) => ((contact < 64 ? _first : _rest[contact / 64 - 1]) >> (contact % 64) & 1) != 0;

    /// <summary>The contacts that are in both of two sets of one bike.</summary>
    public ContactSet And(ContactSet other) =>
        new(_first & other._first, _rest.Length == 0 ? _rest : [.. _rest.Zip(other._rest, (a, b) => a & b)]);

    /// <summary>The contacts that are in one of two sets of one bike.</summary>
    public ContactSet Or(ContactSet other) =>
        new(_first | other._first, _rest.Length == 0 ? _rest : [.. _rest.Zip(other._rest, (a, b) => a | b)]);

    public bool Equals(ContactSet other) => _first == other._first && _rest.AsSpan().SequenceEqual(other._rest);

    public override bool Equals(object? obj) => obj is ContactSet other && Equals(other);

    public override int GetHashCode()
    {
        ulong hash = _first;
        foreach (ulong word in _rest)
            hash = unchecked(31 * hash + word);
        return hash.GetHashCode();
    }
}
