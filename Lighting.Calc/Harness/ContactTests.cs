namespace Lighting.Calc.Harness;

/// <summary>Which contacts of a bike are closed, asked of one setting after the other. For one thread at a time.</summary>
internal sealed class ContactTests(Bike bike)
{
    private readonly PositionTest[] _tests = [.. bike.Switches.Select(s => new PositionTest(s.Switch, s.ClosedIn))];

    /// <summary>For each contact whether a setting closes it.</summary>
    public bool[] ClosedIn(Setting setting)
    {
        var closed = new bool[_tests.Length];
        for (int i = 0; i < closed.Length; i++)
            closed[i] = _tests[i].Holds(setting);
        return closed;
    }
}
