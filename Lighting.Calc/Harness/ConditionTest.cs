namespace Lighting.Calc.Harness;

/// <summary>Whether a condition holds, asked of one setting after the other. For one thread at a time.</summary>
internal sealed class ConditionTest(Condition condition)
{
    private readonly PositionTest[][] _parts = [.. condition.Parts.Select(p => p.Select(t => new PositionTest(t.Switch, t.Positions)).ToArray())];

    public bool Holds(Setting setting)
    {
        foreach (PositionTest[] part in _parts)
        {
            bool holds = false;
            foreach (PositionTest alternative in part)
                holds |= alternative.Holds(setting);
            if (!holds)
                return false;
        }

        return true;
    }
}
