using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The switches of a bike and their positions, to check conditions against.</summary>
internal sealed class SwitchBook
{
    private const int MostListed = 20;
    private readonly Dictionary<string, OrderedDictionary<string, bool>> _positions = new(Name.Comparer);
    private SpellingIndex? _switches;
    private int _unknown;

    /// <summary>Adds a position to a switch, which is added too where it is new.</summary>
    /// <param name="switchName">The switch.</param>
    /// <param name="positions">The positions.</param>
    /// <param name="hasOff">Whether it can be off; one row that says no decides.</param>
    public void Add(string switchName, IEnumerable<string> positions, bool hasOff = true)
    {
        if (!_positions.TryGetValue(switchName, out OrderedDictionary<string, bool>? known))
        {
            _positions[switchName] = known = new(Name.Comparer) { [SwitchDefinition.Off] = true };
            _switches = null;
        }

        foreach (string position in positions)
            known.TryAdd(position, true);
        if (!hasOff)
            known.Remove(SwitchDefinition.Off);
    }

    /// <summary>Adds every switch and position that a condition names.</summary>
    public void Add(Condition condition)
    {
        foreach (ConditionTerm term in condition.Terms)
            Add(term.Switch, term.Positions);
    }

    /// <summary>Logs a fault for each switch or position of a condition that the bike does not have.</summary>
    /// <param name="row">The row.</param>
    /// <param name="column">Its column.</param>
    /// <param name="condition">The condition.</param>
    /// <param name="takesEngine">Whether it may state the engine, see <see cref="EngineTerm"/>.</param>
    public void Check(ListRow row, string column, Condition condition, bool takesEngine = false)
    {
        ConditionTerm? engine = takesEngine ? EngineTerm.Find(condition, _positions.Keys) : null;
        foreach (ConditionTerm term in condition.Terms)
        {
            if (ReferenceEquals(term, engine))
            {
                if (EngineTerm.Of(term) is null)
                    row.Fault(
                        column,
                        term.ToString(),
                        "is not a state of the engine",
                        $"expected {EngineTerm.Expected}"
                    );
                continue;
            }

            if (!_positions.TryGetValue(term.Switch, out OrderedDictionary<string, bool>? known))
            {
                string have =
                    _positions.Count == 0 ? "the bike has no switches" : $"the switches are {Listed(_positions.Keys)}";
                row.Fault(
                    column,
                    term.Switch,
                    "is not a switch of the bike",
                    have,
                    ++_unknown <= ListLimits.Explained ? SpellingSuggestions.Of(term.Switch, _positions.Keys) : []
                );
                continue;
            }

            foreach (string position in term.Positions.Where(p => !known.ContainsKey(p)))
                row.Fault(
                    column,
                    position,
                    $"is not a position of the switch '{term.Switch}'",
                    $"its positions are {Listed(known.Keys)}",
                    ++_unknown <= ListLimits.Explained ? SpellingSuggestions.Of(position, known.Keys) : []
                );
        }
    }

    /// <summary>Words near to a switch name or position, other than itself.</summary>
    public ImmutableArray<string> SwitchesLike(string switchName) =>
        (_switches ??= new SpellingIndex(_positions.Keys)).Of(switchName);

    /// <summary>Positions of a switch that look like this one, other than itself.</summary>
    public ImmutableArray<string> PositionsLike(string switchName, string position) =>
        _positions.TryGetValue(switchName, out OrderedDictionary<string, bool>? known)
            ? [.. known.Keys.Where(p => SpellingSuggestions.LookAlike(p, position))]
            : [];

    private static string Listed(ICollection<string> words) =>
        string.Join(", ", words.Take(MostListed))
        + (words.Count > MostListed ? $" and {words.Count - MostListed} more" : "");
}
