namespace Lighting.Calc;

/// <summary>The closed contacts that may carry current; the others are dead ends.</summary>
/// <remarks>
/// Runs and fuses are contracted to points, so that only contacts, lamps and the source remain. A closed contact whose
/// one side has no other connection closes no path through the source and carries nothing, whatever resistances the
/// runs have. A contact that may carry can still be dead: <see cref="SourceBlock"/> finds those. Immutable.
/// </remarks>
internal sealed class CarryingContacts
{
    private readonly (int A, int B)[] _parts;
    private readonly int[] _alwaysDegree;
    private readonly int _contacts;

    /// <param name="graph">The harness.</param>
    public CarryingContacts(HarnessGraph graph)
    {
        int[] island = new ConnectedNodes(graph).Always.ToArray();
        _contacts = graph.Contacts.Length;
        _parts = [.. graph.Contacts.Concat(graph.Lamps).Select(p => (island[p.A], island[p.B]))];
        _alwaysDegree = new int[island.Length];
        foreach (
            (int a, int b) in (ReadOnlySpan<(int, int)>)
                [.. _parts.AsSpan(_contacts), (island[HarnessGraph.Plus], island[HarnessGraph.Minus])]
        )
            Count(_alwaysDegree, a, b, 1);
    }

    /// <summary>The contacts that may carry current.</summary>
    /// <param name="closed">The contacts that are closed.</param>
    public ContactSet Of(ContactSet closed)
    {
        int[] degree = [.. _alwaysDegree];
        var isThere = new bool[_parts.Length];
        for (int p = 0; p < isThere.Length; p++)
        {
            isThere[p] = p >= _contacts || closed.Has(p);
            if (isThere[p] && p < _contacts)
                Count(degree, _parts[p].A, _parts[p].B, 1);
        }

        // Dead ends are pruned until none is left; a chain of contacts is pruned from its end.
        for (bool isCut = true; isCut;)
        {
            isCut = false;
            for (int p = 0; p < isThere.Length; p++)
            {
                (int a, int b) = _parts[p];
                if (!isThere[p] || a == b || degree[a] > 1 && degree[b] > 1)
                    continue;
                Count(degree, a, b, -1);
                isThere[p] = false;
                isCut = true;
            }
        }

        return ContactSet.Where(_contacts, c => isThere[c]);
    }

    private static void Count(int[] degree, int a, int b, int by)
    {
        if (a == b)
            return;
        degree[a] += by;
        degree[b] += by;
    }
}
