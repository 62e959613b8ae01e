using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>Which contacts each of some settings closes, and which settings have the same currents whatever the values of the bike's parts. Immutable.</summary>
internal sealed class ClosedContacts
{
    private readonly ImmutableArray<bool>[] _closed;
    private readonly bool[][] _kept;
    private readonly int[] _stateOf;

    /// <param name="network">The harness.</param>
    /// <param name="settings">The settings.</param>
    public ClosedContacts(HarnessNetwork network, ImmutableArray<Setting> settings)
    {
        var tests = new ContactTests(network.Bike);
        _closed = new ImmutableArray<bool>[settings.Length];
        _kept = new bool[settings.Length][];
        _stateOf = new int[settings.Length];
        var states = new Dictionary<ContactSet, int>();
        for (int s = 0; s < settings.Length; s++)
        {
            bool[] closed = tests.ClosedIn(settings[s]);
            _closed[s] = ImmutableCollectionsMarshal.AsImmutableArray(closed);
            bool[] kept = _kept[s] = new bool[network.ContactConductors.Length];
            network.Dangling.Drop(closed.AsSpan(0, kept.Length), kept);
            // Without runs conditions say which lamps are lit, in each setting anew.
            if (!network.Bike.HasNetwork)
            {
                _stateOf[s] = s;
                continue;
            }

            var carrying = ContactSet.Where(kept.Length, i => kept[i]);
            if (!states.TryGetValue(carrying, out _stateOf[s]))
                states.Add(carrying, _stateOf[s] = states.Count);
        }

        States = network.Bike.HasNetwork ? states.Count : settings.Length;
    }

    /// <summary>How many states there are.</summary>
    public int States { get; }

    /// <summary>The state of a setting: settings of one state have the same currents.</summary>
    public int StateOf(int setting) => _stateOf[setting];

    /// <summary>For each contact of the bike whether the setting closes it.</summary>
    public ImmutableArray<bool> In(int setting) => _closed[setting];

    /// <summary>For each contact of the harness whether the setting closes it and it may carry current.</summary>
    public ReadOnlySpan<bool> MayCarry(int setting) => _kept[setting];
}
