using System.Collections;
using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The fewest settings in which every lamp is lit, every contact carries and every contact is seen to
/// open.</summary>
/// <remarks>
/// Set cover, exact by branching on the requirement that fewest settings meet; a harness so large that this needs more
/// than
/// <see cref="MostSteps"/> steps gets the best cover found by then, the greedy one at worst. What no setting does is
/// not asked for.
/// </remarks>
internal sealed class SettingCover
{
    private const int MostSteps = 200_000;

    private readonly List<(Setting Setting, BitArray Does, int SwitchedOn)> _candidates;
    private readonly int _count;
    private List<int> _best;
    private int _steps;

    private SettingCover(List<(Setting, BitArray, int)> candidates, int count)
    {
        _candidates = candidates;
        _count = count;
        _best = Greedy();
    }

    public static ImmutableArray<Setting> Of(
        Bike bike,
        HarnessGraph graph,
        Condition within,
        Func<Setting, bool> mayRun,
        CancellationToken cancellationToken
    )
    {
        var distinct = new Dictionary<string, (Setting Setting, BitArray Does, int SwitchedOn)>();
        ImmutableArray<Setting> all = SettingEnumeration.Of(bike, within),
            running = [.. all.Where(mayRun)];
        foreach (Setting setting in running.IsEmpty ? all : running)
        {
            cancellationToken.ThrowIfCancellationRequested();
            BitArray does = Does(graph, setting);
            int on = setting.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off));
            string key = string.Concat(Enumerable.Range(0, does.Length).Select(i => does[i] ? '1' : '0'));
            if (
                !distinct.TryGetValue(key, out (Setting Setting, BitArray Does, int SwitchedOn) known)
                || on < known.SwitchedOn
            )
                distinct[key] = (setting, does, on);
        }

        var cover = new SettingCover(
            [.. distinct.Values.OrderBy(c => c.SwitchedOn)],
            graph.Lamps.Length + 2 * graph.Contacts.Length
        );
        cover.Search([], cover.Wanted());
        return [.. cover._best.Order().Select(i => cover._candidates[i].Setting)];
    }

    // Bits: lamp lit; contact closed and reached; contact open with one side reached.
    private static BitArray Does(HarnessGraph graph, Setting setting)
    {
        ContactSet closed = graph.Switches.ClosedIn(setting);
        Reached live = graph.From(graph.Live, closed),
            earth = graph.From(graph.Earth, closed);
        int lamps = graph.Lamps.Length,
            contacts = graph.Contacts.Length;
        var does = new BitArray(lamps + 2 * contacts);
        foreach (HarnessPart lamp in graph.Lamps)
            does[lamp.Index] = live.Reaches(lamp.A) && earth.Reaches(lamp.B);
        foreach (HarnessPart contact in graph.Contacts)
            does[lamps + (closed.Has(contact.Index) ? 0 : contacts) + contact.Index] =
                live.Meets(contact) || earth.Meets(contact);
        return does;
    }

    private BitArray Wanted()
    {
        var wanted = new BitArray(_count);
        foreach ((_, BitArray does, _) in _candidates)
            wanted.Or(does);
        return wanted;
    }

    private List<int> Greedy()
    {
        BitArray wanted = Wanted();
        var chosen = new List<int>();
        while (wanted.HasAnySet())
        {
            int best = Enumerable.Range(0, _candidates.Count).MaxBy(i => Ones(Met(i, wanted)));
            chosen.Add(best);
            wanted = Without(wanted, best);
        }

        return chosen.Count > 0 ? chosen : [0];
    }

    private void Search(List<int> chosen, BitArray wanted)
    {
        if (!wanted.HasAnySet())
        {
            if (chosen.Count > 0 && Cost(chosen).CompareTo(Cost(_best)) < 0)
                _best = [.. chosen];
            return;
        }

        if (++_steps > MostSteps || chosen.Count + 1 > _best.Count)
            return;
        int rarest = Enumerable.Range(0, _count).Where(i => wanted[i]).MinBy(i => _candidates.Count(c => c.Does[i]));
        foreach (
            int i in Enumerable
                .Range(0, _candidates.Count)
                .Where(i => _candidates[i].Does[rarest])
                .OrderByDescending(i => Ones(Met(i, wanted)))
        )
            Search([.. chosen, i], Without(wanted, i));
    }

    // Fewer settings first, then fewer switches to work.
    private (int Settings, int SwitchedOn) Cost(List<int> chosen) =>
        (chosen.Count, chosen.Sum(i => _candidates[i].SwitchedOn));

    private BitArray Met(int candidate, BitArray wanted) => new BitArray(wanted).And(_candidates[candidate].Does);

    private BitArray Without(BitArray wanted, int candidate) =>
        new BitArray(wanted).And(new BitArray(_candidates[candidate].Does).Not());

    private static int Ones(BitArray bits)
    {
        int ones = 0;
        for (int i = 0; i < bits.Length; i++)
            ones += bits[i] ? 1 : 0;
        return ones;
    }
}
