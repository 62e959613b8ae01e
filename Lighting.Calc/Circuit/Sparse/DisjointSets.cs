namespace Lighting.Calc;

/// <summary>Numbers that are joined into sets, one pair after the other; each set goes by its lowest number.</summary>
internal sealed class DisjointSets
{
    private readonly int[] _root;

    /// <param name="count">How many numbers, from zero, each in a set of its own.</param>
    public DisjointSets(int count)
    {
        _root = new int[count];
        for (int i = 0; i < count; i++)
            _root[i] = i;
    }

    public void Join(int a, int b)
    {
        int rootA = RootOf(a),
            rootB = RootOf(b);
        _root[Math.Max(rootA, rootB)] = Math.Min(rootA, rootB);
    }

    /// <summary>The lowest number of the set.</summary>
    public int RootOf(int number)
    {
        while (_root[number] != number)
            number = _root[number] = _root[_root[number]];
        return number;
    }

    /// <summary>For each number the lowest of its set.</summary>
    public int[] Roots()
    {
        var roots = new int[_root.Length];
        for (int i = 0; i < roots.Length; i++)
            roots[i] = RootOf(i);
        return roots;
    }

    /// <summary>Goes back to sets as <see cref="Roots"/> gave them.</summary>
    public void Restore(int[] roots) => roots.CopyTo(_root, 0);
}
