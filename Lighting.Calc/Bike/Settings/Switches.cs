using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Some switches and their positions by number; of a bike also which contacts each position closes.
/// Immutable.</summary>
internal sealed class Switches
{
    private readonly SwitchPosition[][] _positions;

    // Of each switch one entry more, for a position that it does not have.
    private readonly ContactSet[][] _closes = [];
    private readonly ContactSet _none;
    private int[][]? _hashes;

    /// <param name="positions">For each switch its positions.</param>
    public Switches(SwitchPosition[][] positions) => _positions = positions;

    /// <param name="bike">The bike that has them.</param>
    /// <param name="graph">Its wiring, which says what the contacts of relays do; null where settings alone are
    /// wanted.</param>
    public Switches(Bike bike, HarnessGraph? graph = null)
    {
        if (graph is not null && bike.Lamps.Any(l => l.Coil is not null))
            Relays = new RelayStates(graph, bike);
        Definitions = SettingEnumeration.SwitchesOf(bike);
        _positions = [.. Definitions.Select(d => d.Positions.Select(p => new SwitchPosition(d.Name, p)).ToArray())];
        _none = ContactSet.Where(bike.Switches.Length, _ => false);
        _closes = [.. _positions.Select(all => all.Select(Closed).Append(_none).ToArray())];

        ContactSet Closed(SwitchPosition position) =>
            ContactSet.Where(
                bike.Switches.Length,
                i =>
                    !bike.Switches[i].IsRelay
                    && Name.Equal(bike.Switches[i].Switch, position.Switch)
                    && Name.IsAmong(bike.Switches[i].ClosedIn, position.Position)
            );
    }

    /// <summary>The relays of the bike; null where it has none.</summary>
    public RelayStates? Relays { get; }

    /// <summary>The switches of the bike.</summary>
    public ImmutableArray<SwitchDefinition> Definitions { get; } = [];

    public SwitchPosition At(int switchNumber, int position) => _positions[switchNumber][position];

    /// <summary>What a position adds to the hash of a setting.</summary>
    public int HashAt(int switchNumber, int position) =>
        (
            _hashes ??= [
                .. _positions.Select(all =>
                    all.Select(p =>
                            HashCode.Combine(Name.Comparer.GetHashCode(p.Switch), Name.Comparer.GetHashCode(p.Position))
                        )
                        .ToArray()
                ),
            ]
        )[switchNumber][position];

    /// <summary>Number of a switch; −1 if there is none of that name.</summary>
    public int NumberOf(string switchName)
    {
        for (int s = 0; s < _positions.Length; s++)
            if (Name.Equal(_positions[s][0].Switch, switchName))
                return s;
        return -1;
    }

    /// <summary>For each of these switches the number of its position in a setting; one more than there are where the
    /// setting does not show, or tells another.</summary>
    public int[] NumbersOf(Setting setting)
    {
        var at = new int[_positions.Length];
        for (int s = 0; s < at.Length; s++)
        {
            string? position = setting.PositionOf(_positions[s][0].Switch);
            int number = position is null ? -1 : Array.FindIndex(_positions[s], p => Name.Equal(p.Position, position));
            at[s] = number < 0 ? _positions[s].Length : number;
        }

        return at;
    }

    /// <summary>The contacts of the bike that are closed in a setting, those of relays included.</summary>
    public ContactSet ClosedIn(Setting setting) =>
        Relays is null ? SwitchedIn(setting) : Relays.Of(SwitchedIn(setting)).Closed;

    /// <summary>What the relays of the bike do in a setting; null where it has none.</summary>
    public RelayStates.Settled? RelaysIn(Setting setting) => Relays?.Of(SwitchedIn(setting));

    private ContactSet SwitchedIn(Setting setting)
    {
        ReadOnlySpan<int> at = setting.Over(this);
        ContactSet closed = _none;
        for (int s = 0; s < at.Length; s++)
            closed = closed.Or(_closes[s][at[s]]);
        return closed;
    }

    /// <summary>Whether a condition holds, for settings of these switches above all.</summary>
    public Func<Setting, bool> TestOf(Condition condition)
    {
        if (condition.Terms.Any(t => NumberOf(t.Switch) < 0))
            return condition.Holds;
        // For each part its alternatives, each a switch and whether each of its positions will do.
        (int Switch, bool[] Holds)[][] parts = [.. condition.Parts.Select(p => p.Select(Alternative).ToArray())];
        return setting =>
        {
            ReadOnlySpan<int> at = setting.Over(this);
            foreach ((int Switch, bool[] Holds)[] part in parts)
            {
                bool holds = false;
                foreach ((int number, bool[] willDo) in part)
                    holds |= willDo[at[number]];
                if (!holds)
                    return false;
            }

            return true;
        };
    }

    private (int Switch, bool[] Holds) Alternative(ConditionTerm term)
    {
        int number = NumberOf(term.Switch);
        return (number, [.. _positions[number].Select(p => Name.IsAmong(term.Positions, p.Position)), false]);
    }
}
