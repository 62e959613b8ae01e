namespace Lighting.Calc.Harness;

/// <summary>Whether a condition holds, asked of one setting after the other. For one thread at a time.</summary>
internal sealed class ConditionTest(Condition condition)
{
    private readonly PositionTest[] _terms = [.. condition.Terms.Select(t => new PositionTest(t.Switch, t.Positions))];

    public bool Holds(Setting setting)
    {
        foreach (PositionTest term in _terms)
            if (!term.Holds(setting))
                return false;
        return true;
    }
}
