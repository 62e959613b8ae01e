using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Ways of least resistance over a bike's runs, contacts and fuses.</summary>
/// <remarks>
/// They never lead through a battery terminal, and never through a lamp: a dead short does not pass one. A walk is done
/// once and kept for all states that agree in the contacts it comes to. For one thread at a time.
/// </remarks>
internal sealed class DownstreamGraph
{
    private readonly double[] _ohms;

    // By start, part left out and whether fuses are walked over, as one number; then by the contacts that a walk comes
    // to, of which there are few sets, and by those of them that are closed.
    private readonly Dictionary<int, List<(ContactSet Met, Dictionary<ContactSet, Reached> ByClosed)>> _walks = [];

    /// <param name="bike">The bike.</param>
    /// <param name="harness">Its wiring; null to number it here.</param>
    public DownstreamGraph(Bike bike, HarnessGraph? harness = null)
    {
        Bike = bike;
        Harness = harness ?? new HarnessGraph(bike);
        _ohms =
        [
            .. Harness.Parts.Select(p =>
                p.Kind switch
                {
                    HarnessPartKind.Run => (
                        bike.Runs[p.Index].WireResistance(bike.WireTemperature)
                        + bike.Runs[p.Index].TotalJointResistance
                    ).Ohms,
                    HarnessPartKind.Contact => bike.Switches[p.Index].Resistance.Ohms,
                    HarnessPartKind.Fuse => OhmsOf(p),
                    _ => HarnessGraph.NoWay,
                }
            ),
        ];
    }

    public Bike Bike { get; }

    /// <summary>The bike's wiring.</summary>
    public HarnessGraph Harness { get; }

    /// <summary>Whether a fuse's resistance is listed or published.</summary>
    public static bool KnowsOhms(Fuse fuse) =>
        fuse.Resistance is not null
        || FuseTable
            .Of(fuse.Style)
            .Any(f => Math.Abs(f.Rating.Amperes - fuse.Rating.Amperes) < 1e-9 && f.ColdResistance is not null);

    /// <summary>The states of groups of settings.</summary>
    public static ImmutableArray<FeedState> States(SettingGroups groups) =>
        [.. groups.First.Zip(groups.Closed, (setting, closed) => new FeedState(setting, closed))];

    /// <summary>Resistance of a fuse.</summary>
    public double OhmsOf(HarnessPart fuse) => FuseTable.ResistanceOf(Bike.Fuses[fuse.Index]).Ohms;

    /// <summary>Walks from a point over the parts that pass current.</summary>
    /// <param name="start">The point.</param>
    /// <param name="state">Which contacts are closed.</param>
    /// <param name="without">A part that is left out; null for none.</param>
    /// <param name="throughFuses">Whether fuses are walked over.</param>
    public Reached Walk(int start, FeedState state, HarnessPart? without = null, bool throughFuses = true)
    {
        int key =
            2 * ((Harness.Parts.Length + 1) * start + (without?.Place ?? Harness.Parts.Length))
            + (throughFuses ? 1 : 0);
        if (!_walks.TryGetValue(key, out var known))
            _walks.Add(key, known = []);
        foreach ((ContactSet met, Dictionary<ContactSet, Reached> byClosed) in known)
            if (byClosed.TryGetValue(state.Closed.And(met), out Reached? walk))
                return walk;
        Reached fresh = Walked(start, state, without, throughFuses);
        ContactSet comesTo = fresh.MetContacts();
        int place = known.FindIndex(k => k.Met.Equals(comesTo));
        if (place < 0)
        {
            place = known.Count;
            known.Add((comesTo, []));
        }

        known[place].ByClosed.Add(state.Closed.And(comesTo), fresh);
        return fresh;
    }

    private Reached Walked(int start, FeedState state, HarnessPart? without, bool throughFuses)
    {
        return Harness.From(start, Ohms, pastBattery: false);

        double Ohms(HarnessPart part) =>
            !part.Joins(state.Closed)
            || part.Kind == HarnessPartKind.Fuse && !throughFuses
            || ReferenceEquals(part, without)
                ? HarnessGraph.NoWay
                : _ohms[part.Place];
    }
}
