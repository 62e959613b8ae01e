namespace Lighting.Calc;

/// <summary>Points joined by parts of a harness, one state of the contacts after the other. For one thread at a
/// time.</summary>
/// <remarks>Parts that are always joined are joined once; a state then costs one union for each closed contact instead
/// of one path search for each lamp.</remarks>
internal sealed class ConnectedNodes
{
    private readonly HarnessGraph _graph;
    private readonly DisjointSets _sets;
    private readonly int[] _always;

    /// <param name="graph">The harness.</param>
    /// <param name="fuses">Whether fuses join their points.</param>
    public ConnectedNodes(HarnessGraph graph, bool fuses = true)
    {
        _graph = graph;
        _sets = new DisjointSets(graph.Points.Length);
        foreach (HarnessPart part in fuses ? graph.Runs.Concat(graph.Fuses) : graph.Runs)
            _sets.Join(part.A, part.B);
        _always = _sets.Roots();
    }

    /// <summary>For each point the lowest of those that are always joined with it.</summary>
    public ReadOnlySpan<int> Always => _always;

    /// <summary>Joins the ends of the closed contacts besides.</summary>
    public void Join(ContactSet closed)
    {
        _sets.Restore(_always);
        foreach (HarnessPart contact in _graph.Contacts)
            if (closed.Has(contact.Index))
                _sets.Join(contact.A, contact.B);
    }

    /// <summary>Whether two points are joined; each is joined to itself.</summary>
    public bool Are(int a, int b) => _sets.RootOf(a) == _sets.RootOf(b);
}
