// A harness of any size as bikes have them: feed and ground run in one bundle, lamps sit where both pass.

namespace Lighting.Calc.Tests.Network;

internal static class LargeHarness
{
    private static readonly LampType[] s_kinds =
    [
        LampType.Filament,
        LampType.Filament,
        LampType.Halogen,
        LampType.Led,
        LampType.LedResistor,
        LampType.Fixed,
        LampType.Resistor,
    ];

    /// <summary>For each 40 points 25 mixed lamps and 3 loops, at 13.5 V behind 10 mΩ.</summary>
    public static TestNetwork Create(int points)
    {
        var random = new Random(40);
        int places = points / 2;
        int lamps = points * 25 / 40;
        double scale = Math.Min(1, 40.0 / points);
        var parent = new int[places];
        var conductors = new List<TestConductor>();
        for (int p = 1; p < places; p++)
        {
            // Place p has its ground at node 2·p and its feed at 2·p + 1; the battery is place 0.
            parent[p] = random.Next(Math.Max(0, p - 8), p);
            conductors.Add(new TestConductor(2 * parent[p] + 1, 2 * p + 1, Wire()));
            conductors.Add(new TestConductor(2 * p, 2 * parent[p], Wire()));
        }

        for (int i = 0; i < points * 3 / 40; i++)
        {
            int p = random.Next(2, places);
            int side = random.Next(2);
            conductors.Add(new TestConductor(2 * p + side, 2 * parent[parent[p]] + side, Wire()));
        }

        var loads = new List<TestLoad>();
        for (int i = 0; i < lamps; i++)
        {
            int p = i < places - 1 ? i + 1 : random.Next(1, places);
            loads.Add(
                new TestLoad(2 * p + 1, 2 * p, RandomNetworks.Lamp(random, s_kinds[random.Next(s_kinds.Length)], 13.5))
            );
        }

        return new TestNetwork(2 * places, 1, 0, 13.5, 0.01 * scale, conductors, loads);

        double Wire() => scale * scale * (0.005 + 0.02 * random.NextDouble());
    }
}
