using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>Which points some of a harness's parts join, one setting after the other. For one thread at a time.</summary>
/// <remarks>Points are numbered, and what is always joined is joined, once; a setting then costs one union of each closed contact's ends, where a search for a way would cost one for each lamp.</remarks>
internal sealed class JoinedPoints
{
    private readonly Dictionary<string, int> _numbers = new(Name.Comparer);
    private readonly (int From, int To, int Contact)[] _contacts;
    private readonly int[] _always;
    private readonly DisjointSets _sets;

    /// <param name="bike">The bike.</param>
    /// <param name="links">Those of its parts that may join points.</param>
    public JoinedPoints(Bike bike, IEnumerable<HarnessLink> links)
    {
        foreach (string point in (string[])[bike.LivePoint, bike.EarthPoint, .. bike.Fuses.SelectMany(f => (string?[])[f.From, f.To]).OfType<string>(), .. bike.Lamps.SelectMany(l => (string?[])[l.Feed, l.Return]).OfType<string>()])
            Number(point);
        (int From, int To, int Contact)[] all = [.. links.Select(l => (Number(l.From), Number(l.To), l.Kind == HarnessLinkKind.Contact ? l.Index : -1))];
        _contacts = [.. all.Where(l => l.Contact >= 0)];
        _sets = new DisjointSets(_numbers.Count);
        foreach ((int from, int to, int contact) in all)
            if (contact < 0)
                _sets.Join(from, to);
        _always = _sets.Roots();
    }

    /// <summary>Number of a battery point, or of a point that a lamp, a fuse or one of the parts hangs on.</summary>
    public int NumberOf(string point) => _numbers[point];

    /// <summary>Joins the points of all parts but the contacts that are open.</summary>
    /// <param name="closed">For each contact of the bike whether it is closed; empty closes all.</param>
    public void Join(ReadOnlySpan<bool> closed)
    {
        _sets.Restore(_always);
        foreach ((int from, int to, int contact) in _contacts)
            if (closed.IsEmpty || closed[contact])
                _sets.Join(from, to);
    }

    /// <summary>Whether two points, by their numbers, are joined; each is joined to itself.</summary>
    public bool Are(int a, int b) => _sets.RootOf(a) == _sets.RootOf(b);

    private int Number(string point)
    {
        if (!_numbers.TryGetValue(point, out int number))
            _numbers.Add(point, number = _numbers.Count);
        return number;
    }
}
