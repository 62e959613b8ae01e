using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Lists;

/// <summary>The switches of a bike and their positions, to check conditions against.</summary>
internal sealed class SwitchBook
{
    private readonly Dictionary<string, List<string>> _positions = new(Name.Comparer);

    /// <summary>Adds a position to a switch, which is added too where it is new.</summary>
    public void Add(string switchName, IEnumerable<string> positions)
    {
        if (!_positions.TryGetValue(switchName, out List<string>? known))
            _positions[switchName] = known = [SwitchDefinition.Off];
        known.AddRange(positions.Where(p => !known.Contains(p, Name.Comparer)));
    }

    /// <summary>Adds every switch and position that a condition names.</summary>
    public void Add(Condition condition)
    {
        foreach (ConditionTerm term in condition.Terms)
            Add(term.Switch, term.Positions);
    }

    /// <summary>Logs a fault for each switch or position of a condition that the bike does not have.</summary>
    public void Check(ListRow row, string column, Condition condition)
    {
        foreach (ConditionTerm term in condition.Terms)
        {
            if (!_positions.TryGetValue(term.Switch, out List<string>? known))
            {
                string have = _positions.Count == 0 ? "the bike has no switches" : $"the switches are {string.Join(", ", _positions.Keys)}";
                row.Fault(column, term.Switch, "is not a switch of the bike", have, NearestWords.Of(term.Switch, _positions.Keys));
                continue;
            }

            foreach (string position in term.Positions.Where(p => !known.Contains(p, Name.Comparer)))
                row.Fault(column, position, $"is not a position of the switch '{term.Switch}'", $"its positions are {string.Join(", ", known)}", NearestWords.Of(position, known));
        }
    }

    /// <summary>Words near to a switch name or position, other than itself.</summary>
    public ImmutableArray<string> SwitchesLike(string switchName) => [.. _positions.Keys.Where(k => NearestWords.LookAlike(k, switchName))];

    /// <summary>Positions of a switch that look like this one, other than itself.</summary>
    public ImmutableArray<string> PositionsLike(string switchName, string position) =>
        _positions.TryGetValue(switchName, out List<string>? known) ? [.. known.Where(p => NearestWords.LookAlike(p, position))] : [];
}
