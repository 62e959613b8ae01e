namespace Lighting.Calc;

/// <summary>Which lamps are fed in a setting, and which of their currents each part carries.</summary>
internal sealed class CarriedLamps
{
    private readonly HashSet<int> _fed;
    private readonly ILookup<(int From, int To), int> _lamps;

    public CarriedLamps(HarnessGraph graph, Setting setting)
    {
        ContactSet closed = graph.Switches.ClosedIn(setting);
        Reached live = graph.From(graph.Live, closed),
            earth = graph.From(graph.Earth, closed);
        HarnessPart[] fed = [.. graph.Lamps.Where(l => live.Reaches(l.A) && earth.Reaches(l.B))];
        _fed = [.. fed.Select(l => l.Index)];
        _lamps = fed.SelectMany(l =>
                live.PathTo(l.A)
                    .Concat(earth.PathTo(l.B))
                    .Select(p => (Ends: (p.A, p.B), Lamp: l.Index))
                    .Distinct()
            )
            .ToLookup(c => c.Ends, c => c.Lamp);
    }

    /// <summary>Whether closed parts join a lamp to both terminals of the battery.</summary>
    public bool IsFed(int lamp) => _fed.Contains(lamp);

    /// <summary>The lamps whose current a part carries, in the order of the list.</summary>
    public IEnumerable<int> Of(MeasuredPart part) =>
        part.Lamp < 0 ? _lamps[(part.From, part.To)]
        : IsFed(part.Lamp) ? [part.Lamp]
        : [];
}
