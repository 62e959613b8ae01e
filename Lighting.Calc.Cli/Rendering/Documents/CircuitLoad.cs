namespace Lighting.Calc.Cli.Rendering;

/// <summary>What one circuit draws in a setting.</summary>
internal sealed record CircuitLoad(string Circuit, double Amperes, double Watts)
{
    public static readonly Columns<CircuitLoad> Columns = new()
    {
        { "circuit", "circuit", c => c.Circuit },
        { "A", "currentA", c => c.Amperes },
        { "W", "powerW", c => c.Watts, "F1" },
    };

    public static IEnumerable<CircuitLoad> Of(OperatingPoint point) =>
        point
            .Lamps.GroupBy(l => l.Lamp.Circuit, StringComparer.OrdinalIgnoreCase)
            .Select(g => new CircuitLoad(g.Key, g.Sum(l => l.Current.Amperes), g.Sum(l => (double)l.Power.Watts)));
}
