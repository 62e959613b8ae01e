// Random harnesses: a feed tree, a ground tree, lamps between them, a few extra leads that close loops.

namespace Lighting.Calc.Tests.Network;

internal static class RandomNetworks
{
    /// <param name="random">Source of chance, seeded by the test.</param>
    /// <param name="lamps">Loads, cycling through <paramref name="kinds"/> at random.</param>
    /// <param name="loops">Extra conductors between points of the same tree.</param>
    /// <param name="kinds">Kinds of load to choose from.</param>
    /// <param name="scale">Size of the wiring resistances: 1 for drops of some percent.</param>
    public static TestNetwork Harness(
        Random random,
        int lamps,
        int loops,
        IReadOnlyList<LampType> kinds,
        double scale = 1
    )
    {
        double emf = random.Next(2) == 0 ? 6.8 : 13.5;
        int points = Math.Max(1, lamps / 2);
        var conductors = new List<TestConductor>();
        var loads = new List<TestLoad>();
        int nodes = 2; // 0 is the minus, 1 the plus
        int[] feeds = Tree(1);
        int[] grounds = Tree(0);
        for (int i = 0; i < loops; i++)
        {
            int[] tree = random.Next(2) == 0 ? feeds : grounds;
            conductors.Add(new TestConductor(Pick(tree), Pick(tree), Wire()));
        }

        for (int i = 0; i < lamps; i++)
        {
            LampType kind = kinds[random.Next(kinds.Count)];
            int quantity = random.Next(4) == 0 ? 2 : 1;
            loads.Add(new TestLoad(Pick(feeds), Pick(grounds), Lamp(random, kind, emf, quantity)));
        }

        return new TestNetwork(
            nodes,
            1,
            0,
            emf,
            random.Next(3) == 0 ? 0 : 0.02 * random.NextDouble(),
            conductors,
            loads
        );

        int[] Tree(int root)
        {
            var tree = new List<int> { root };
            for (int i = 0; i < points; i++)
            {
                conductors.Add(new TestConductor(Pick(tree), nodes, Wire()));
                tree.Add(nodes++);
            }

            return [.. tree];
        }

        int Pick(IReadOnlyList<int> from) => from[random.Next(from.Count)];

        // A few amperes over a few metres; the whole tree's drop grows with the number of lamps.
        double Wire() => scale * (0.002 + 0.03 * random.NextDouble()) * Math.Min(1, 8.0 / lamps);
    }

    /// <summary>Anything between any two points, either way round: not a harness, but legal.</summary>
    public static TestNetwork Anything(
        Random random,
        int nodes,
        int conductors,
        int loads,
        IReadOnlyList<LampType> kinds
    )
    {
        double emf = random.Next(2) == 0 ? 6.8 : 13.5;
        return new TestNetwork(
            nodes,
            1,
            0,
            emf,
            random.Next(3) == 0 ? 0 : 0.1 * random.NextDouble(),
            [
                .. Enumerable
                    .Range(0, conductors)
                    .Select(_ => new TestConductor(random.Next(nodes), random.Next(nodes), Ohms())),
            ],
            [.. Enumerable.Range(0, loads).Select(_ => new TestLoad(random.Next(nodes), random.Next(nodes), Law()))]
        );

        double Ohms() =>
            random.Next(10) switch
            {
                0 => double.PositiveInfinity,
                1 => random.Next(2) == 0 ? 0 : 1e7,
                _ => Math.Pow(10, -3 + 4 * random.NextDouble()),
            };

        Load Law()
        {
            Load law = Lamp(random, kinds[random.Next(kinds.Count)], emf);
            return random.Next(2) == 0 ? law : law.Reverse();
        }
    }

    public static Load Lamp(Random random, LampType kind, double emf, int quantity = 1)
    {
        double watts = 1 + 20 * random.NextDouble();
        return kind switch
        {
            LampType.Filament or LampType.Halogen => Load.Filament(emf, watts / emf, quantity),
            LampType.Led => Load.Led(watts / 4, random.Next(3, 5), quantity),
            LampType.LedResistor => Load.LedResistor(0.45 * emf, 0.55 * emf * emf / watts * 4, quantity),
            LampType.Fixed => Load.Fixed(watts / emf / 4, quantity),
            _ => Load.Resistor(emf * emf / watts, quantity),
        };
    }
}
