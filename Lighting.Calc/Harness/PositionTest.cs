using System.Collections.Immutable;

namespace Lighting.Calc.Harness;

/// <summary>Whether a switch stands in one of some positions, asked of one setting after the other. For one thread at a time.</summary>
/// <remarks>Settings of one enumeration share their texts, so that most answers need no comparison of letters.</remarks>
internal sealed class PositionTest(string switchName, ImmutableArray<string> positions)
{
    private readonly List<(string Position, bool Holds)> _known = [];
    private string? _switch;
    private int _place;

    public bool Holds(Setting setting)
    {
        ImmutableArray<SwitchPosition> all = setting.Positions;
        if (_place >= all.Length || !ReferenceEquals(all[_place].Switch, _switch))
        {
            for (_place = 0; _place < all.Length && !Name.Equal(all[_place].Switch, switchName);)
                _place++;
            if (_place == all.Length)
                return false;
            _switch = all[_place].Switch;
        }

        string position = all[_place].Position;
        foreach ((string known, bool answer) in _known)
            if (ReferenceEquals(known, position))
                return answer;
        bool holds = positions.Contains(position, Name.Comparer);
        // More texts than a switch has positions: the settings do not share theirs.
        if (_known.Count < 16)
            _known.Add((position, holds));
        return holds;
    }
}
