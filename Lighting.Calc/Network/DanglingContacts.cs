// Tells closed contacts that lead nowhere from those that may carry current.
namespace Lighting.Calc.Network;

/// <summary>A harness with its runs and fuses drawn together to points, so that only contacts, loads and the source are left.</summary>
/// <remarks>
/// A closed contact whose one side has no other way on closes no path through the source and carries nothing, whatever
/// resistances the runs have. Settings that differ in such contacts only have the same currents. A contact that is kept may
/// still be dead: <see cref="LiveCore"/> finds those. Immutable.
/// </remarks>
internal sealed class DanglingContacts
{
    private readonly int[] _a;
    private readonly int[] _b;
    private readonly int[] _partsStart;
    private readonly int[] _partsAt;
    private readonly int[] _alwaysDegree;
    private readonly int _contacts;

    /// <param name="circuit">The circuit.</param>
    /// <param name="contacts">Its conductors that are contacts.</param>
    public DanglingContacts(Circuit circuit, ReadOnlySpan<int> contacts)
    {
        int[] island = Islands(circuit, contacts);
        _contacts = contacts.Length;
        // Contacts first, then loads, the source last.
        _a = new int[_contacts + circuit.LoadCount + 1];
        _b = new int[_a.Length];
        for (int i = 0; i < _contacts; i++)
            (_a[i], _b[i]) = (island[circuit.ConductorA[contacts[i]]], island[circuit.ConductorB[contacts[i]]]);
        for (int i = 0; i < circuit.LoadCount; i++)
            (_a[_contacts + i], _b[_contacts + i]) = (island[circuit.LoadFeed[i]], island[circuit.LoadReturn[i]]);
        (_a[^1], _b[^1]) = (island[circuit.Plus], island[circuit.Minus]);

        _alwaysDegree = new int[circuit.NodeCount];
        _partsStart = new int[circuit.NodeCount + 1];
        for (int p = 0; p < _a.Length; p++)
        {
            if (_a[p] == _b[p])
                continue;
            _partsStart[_a[p] + 1]++;
            _partsStart[_b[p] + 1]++;
            if (p >= _contacts)
            {
                _alwaysDegree[_a[p]]++;
                _alwaysDegree[_b[p]]++;
            }
        }

        for (int v = 0; v < circuit.NodeCount; v++)
            _partsStart[v + 1] += _partsStart[v];
        _partsAt = new int[_partsStart[^1]];
        int[] next = [.. _partsStart];
        for (int p = 0; p < _a.Length; p++)
        {
            if (_a[p] == _b[p])
                continue;
            _partsAt[next[_a[p]]++] = p;
            _partsAt[next[_b[p]]++] = p;
        }
    }

    /// <summary>Takes the contacts that lead nowhere out of those that are closed.</summary>
    /// <param name="closed">For each contact whether it is closed.</param>
    /// <param name="kept">Receives whether it is closed and may carry current.</param>
    public void Drop(ReadOnlySpan<bool> closed, Span<bool> kept)
    {
        closed.CopyTo(kept);
        Span<int> degree = stackalloc int[_alwaysDegree.Length <= 512 ? _alwaysDegree.Length : 0];
        if (degree.IsEmpty)
            degree = new int[_alwaysDegree.Length];
        Span<bool> gone = stackalloc bool[_a.Length <= 512 ? _a.Length : 0];
        if (gone.IsEmpty)
            gone = new bool[_a.Length];
        _alwaysDegree.CopyTo(degree);
        gone.Clear();
        for (int c = 0; c < _contacts; c++)
        {
            gone[c] = !closed[c];
            if (closed[c] && _a[c] != _b[c])
            {
                degree[_a[c]]++;
                degree[_b[c]]++;
            }
        }

        for (int v = 0; v < degree.Length; v++)
        {
            // Follows a chain of single ends as far as it goes.
            for (int at = v; degree[at] == 1;)
            {
                int part = Only(at, gone);
                if (part == _a.Length - 1)
                    break;
                gone[part] = true;
                if (part < _contacts)
                    kept[part] = false;
                degree[at] = 0;
                at = _a[part] == at ? _b[part] : _a[part];
                degree[at]--;
            }
        }
    }

    private int Only(int at, ReadOnlySpan<bool> gone)
    {
        for (int i = _partsStart[at]; i < _partsStart[at + 1]; i++)
            if (!gone[_partsAt[i]])
                return _partsAt[i];
        throw new InvalidOperationException("A point of one part has none.");
    }

    private static int[] Islands(Circuit circuit, ReadOnlySpan<int> contacts)
    {
        var islands = new DisjointSets(circuit.NodeCount);
        for (int i = 0; i < circuit.ConductorCount; i++)
        {
            if (!contacts.Contains(i))
                islands.Join(circuit.ConductorA[i], circuit.ConductorB[i]);
        }

        return islands.Roots();
    }
}
