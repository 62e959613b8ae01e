using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Two wires that can be exchanged where they are joined: each then goes to the other's end.</summary>
/// <param name="First">Index of a run.</param>
/// <param name="Second">Index of another.</param>
internal sealed record WireCrossing(int First, int Second)
{
    /// <summary>The pairs of wires of the live side that leave one switch, or end at two lamps of one circuit, from two
    /// points to two points.</summary>
    public static ImmutableArray<WireCrossing> Of(Bike bike, HarnessSides sides, HarnessGraph graph)
    {
        var found = ImmutableArray.CreateBuilder<WireCrossing>();
        for (int a = 0; a < bike.Runs.Length; a++)
            for (int b = a + 1; b < bike.Runs.Length; b++)
            {
                HarnessPart first = graph.Runs[a],
                    second = graph.Runs[b];
                bool apart = first.A != second.A && first.A != second.B && first.B != second.A && first.B != second.B;
                if (
                    apart
                    && !sides.IsEarth(a)
                    && !sides.IsEarth(b)
                    && (
                        SwitchBefore(bike.Runs[a].From) is { } its && its == SwitchBefore(bike.Runs[b].From)
                        || CircuitAt(bike.Runs[a].To) is { } circuit && circuit == CircuitAt(bike.Runs[b].To)
                    )
                )
                    found.Add(new WireCrossing(a, b));
            }

        return found.ToImmutable();

        string? SwitchBefore(string point) =>
            bike.Switches.Where(s => Name.Equal(s.To, point)).Select(s => s.Switch).FirstOrDefault();
        string? CircuitAt(string point) =>
            bike.Lamps.Where(l => Name.Equal(l.Feed!, point)).Select(l => l.Circuit).FirstOrDefault();
    }
}
