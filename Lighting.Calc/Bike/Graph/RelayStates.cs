using System.Collections.Concurrent;
using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Which relays of a bike the wiring pulls in: those whose coils closed contacts, runs and fuses join to both
/// terminals of the battery.</summary>
/// <remarks>From all at rest on, one relay after the other, until none changes. Where that never ends a relay opens the
/// contact that feeds it, and chatters; those that still change are taken at rest. Safe to share between
/// threads.</remarks>
internal sealed class RelayStates
{
    private readonly HarnessGraph _graph;
    private readonly int _contacts;
    private readonly ContactSet[] _make;
    private readonly ContactSet[] _break;
    private readonly ConcurrentDictionary<ContactSet, Settled> _settled = new();

    public RelayStates(HarnessGraph graph, Bike bike)
    {
        (_graph, _contacts) = (graph, bike.Switches.Length);
        Coils = [.. Enumerable.Range(0, bike.Lamps.Length).Where(l => bike.Lamps[l].Coil is not null)];
        _make = [.. Coils.Select(c => Of(c, Relay.In))];
        _break = [.. Coils.Select(c => Of(c, Relay.Out))];

        ContactSet Of(int coil, string position) =>
            ContactSet.Where(_contacts, i =>
                bike.Switches[i].IsRelay
                && Name.Equal(bike.Switches[i].Switch, bike.Lamps[coil].Lamp)
                && bike.Switches[i].ClosedIn.Contains(position, Name.Comparer)
            );
    }

    /// <summary>The lamps that are coils.</summary>
    public ImmutableArray<int> Coils { get; }

    /// <summary>The contacts that are closed, those of relays included.</summary>
    /// <param name="switched">The closed contacts of switches.</param>
    public Settled Of(ContactSet switched) => _settled.GetOrAdd(switched, s => Settle(s, null));

    /// <summary>The same where some parts do not carry a coil's current.</summary>
    /// <param name="switched">The closed contacts of switches.</param>
    /// <param name="carries">Whether a part carries the current of a relay's coil.</param>
    public Settled Of(ContactSet switched, Func<int, HarnessPart, bool> carries) => Settle(switched, carries);

    /// <summary>Closed contacts with one relay in another state.</summary>
    public ContactSet With(ContactSet closed, int relay, bool isIn)
    {
        (ContactSet on, ContactSet off) = isIn ? (_make[relay], _break[relay]) : (_break[relay], _make[relay]);
        return ContactSet.Where(_contacts, i => on.Has(i) || closed.Has(i) && !off.Has(i));
    }

    /// <summary>The contacts that are closed with every relay at rest.</summary>
    /// <param name="switched">The closed contacts of switches.</param>
    public ContactSet AtRest(ContactSet switched) =>
        Enumerable.Range(0, Coils.Length).Aggregate(switched, (closed, r) => With(closed, r, isIn: false));

    private Settled Settle(ContactSet switched, Func<int, HarnessPart, bool>? carries)
    {
        var isIn = new bool[Coils.Length];
        ContactSet closed = AtRest(switched);
        var changed = new bool[isIn.Length];
        // A chain of relays settles within as many rounds as there are relays; two more show who never does.
        for (int round = 0; round < isIn.Length + 3; round++)
        {
            Array.Clear(changed);
            for (int r = 0; r < isIn.Length; r++)
                if (IsFed(r, closed, carries) != isIn[r])
                {
                    (isIn[r], changed[r]) = (!isIn[r], true);
                    closed = With(closed, r, isIn[r]);
                }

            if (!changed.Contains(true))
                return new Settled(closed, [.. isIn], [.. changed]);
        }

        for (int r = 0; r < isIn.Length; r++)
            if (changed[r])
            {
                isIn[r] = false;
                closed = With(closed, r, isIn: false);
            }

        return new Settled(closed, [.. isIn], [.. changed]);
    }

    // A coil works either way round.
    private bool IsFed(int relay, ContactSet closed, Func<int, HarnessPart, bool>? carries)
    {
        HarnessPart coil = _graph.Lamps[Coils[relay]];
        Func<HarnessPart, bool>? passes = carries is null ? null : p => carries(relay, p);
        Reached live = _graph.From(_graph.Live, closed, passes),
            earth = _graph.From(_graph.Earth, closed, passes);
        return live.Reaches(coil.A) && earth.Reaches(coil.B) || live.Reaches(coil.B) && earth.Reaches(coil.A);
    }

    /// <summary>The relays of one setting.</summary>
    /// <param name="Closed">The closed contacts, those of relays included.</param>
    /// <param name="IsIn">For each relay whether it is pulled in.</param>
    /// <param name="Chatters">For each relay whether it opens the contact that feeds it.</param>
    internal sealed record Settled(ContactSet Closed, ImmutableArray<bool> IsIn, ImmutableArray<bool> Chatters);
}
