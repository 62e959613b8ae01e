// What must hold of any harness, whatever its numbers.
using FsCheck.Xunit;

namespace Lighting.Calc.Tests.Network;

public sealed class NetworkPropertyTests
{
    private static readonly LampType[] s_allKinds = Enum.GetValues<LampType>();
    private static readonly LampType[] s_passive = [LampType.Filament, LampType.Halogen];

    /// <remarks>
    /// Of the lamps that the wire feeds. A lamp beside them may well lose a little: what they gain they draw over the
    /// wire and the battery that it shares with them.
    /// </remarks>
    [Property(MaxTest = 300)]
    public void A_better_wire_never_dims_the_filaments_it_feeds(int seed, byte which, bool trunk)
    {
        var random = new Random(seed);
        TestNetwork n = RandomNetworks.Harness(random, 2 + random.Next(25), 0, s_passive);
        int wires = (n.Nodes - 2) / 2; // the feed tree comes first, each wire from its parent to its own point
        n = n with
        {
            Conductors = [.. n.Conductors.Take(wires)],
            Loads = [.. n.Loads.Select(l => l with { Return = 0 })],
        };
        int changed = trunk ? 0 : which % wires;
        TestNetwork better = WithOhms(n, changed, n.Conductors[changed].Ohms * random.NextDouble());
        CircuitSolver thin = n.Solved();
        CircuitSolver thick = better.Solved();
        var fed = new HashSet<int> { n.Conductors[changed].B };
        foreach (TestConductor c in n.Conductors.Where(c => fed.Contains(c.A)))
            fed.Add(c.B);
        for (int i = 0; i < n.Loads.Count; i++)
        {
            if (fed.Contains(n.Loads[i].Feed))
                Assert.True(thick.LoadVolts(i) >= thin.LoadVolts(i) - 1e-10);
        }
    }

    // What the law above does not say, and a sharp-eyed reader might take it for: two lamps on one feed, one of them on
    // a wire that is repaired.
    [Fact]
    public void A_better_wire_to_one_lamp_may_dim_its_neighbour_on_the_same_feed()
    {
        TestNetwork poor = Neighbours(branchOhms: 1, groundOhms: 1),
            repaired = Neighbours(branchOhms: 0.01, groundOhms: 1),
            grounded = Neighbours(branchOhms: 1, groundOhms: 0.01);
        double before = poor.Solved().LoadVolts(1);
        Assert.InRange(before - repaired.Solved().LoadVolts(1), 0.01, 1);
        Assert.InRange(before - grounded.Solved().LoadVolts(1), 0.01, 1);
    }

    // Plus 1, feed 2 behind 0.3 Ω, first lamp 3 to 4 behind a branch and a ground of its own, second lamp straight on
    // the feed.
    private static TestNetwork Neighbours(double branchOhms, double groundOhms) =>
        new(
            Nodes: 5,
            Plus: 1,
            Minus: 0,
            Emf: 13.5,
            SourceOhms: 0,
            Conductors:
            [
                new TestConductor(1, 2, 0.3),
                new TestConductor(2, 3, branchOhms),
                new TestConductor(4, 0, groundOhms),
            ],
            Loads: [new TestLoad(3, 4, Load.Filament(13.5, 1.85)), new TestLoad(2, 0, Load.Filament(13.5, 1.85))]
        );

    /// <remarks>With feeds that drop nothing; where lamps share a bad feed, one that gains draws from the
    /// others.</remarks>
    [Property(MaxTest = 300)]
    public void A_parallel_ground_never_dims(int seed)
    {
        var random = new Random(seed);
        TestNetwork n = RandomNetworks.Harness(random, 2 + random.Next(25), 3, s_passive);
        n = n with { SourceOhms = 0, Loads = [.. n.Loads.Select(l => l with { Feed = 1 })] };
        int ground = n.Loads[random.Next(n.Loads.Count)].Return;
        TestNetwork grounded = n with
        {
            Conductors = [.. n.Conductors, new TestConductor(ground, 0, 0.05 * random.NextDouble())],
        };
        CircuitSolver one = n.Solved();
        CircuitSolver two = grounded.Solved();
        for (int i = 0; i < n.Loads.Count; i++)
            Assert.True(two.LoadVolts(i) >= one.LoadVolts(i) - 1e-10);
    }

    [Property(MaxTest = 200)]
    public void Scaling_resistances_up_and_currents_down_leaves_the_volts(int seed, byte power)
    {
        var random = new Random(seed);
        double k = Math.Pow(2, power % 9 - 4) * 1.3;
        // Ballasted LEDs leak a little whatever their size, which does not scale.
        TestNetwork n = RandomNetworks.Harness(
            random,
            1 + random.Next(40),
            3,
            [.. s_allKinds.Where(l => l != LampType.LedResistor)]
        );
        TestNetwork scaled = n with
        {
            SourceOhms = n.SourceOhms * k,
            Conductors = [.. n.Conductors.Select(c => c with { Ohms = c.Ohms * k })],
            Loads = [.. n.Loads.Select(l => l with { Law = Scale(l.Law, k) })],
        };
        CircuitSolver a = n.Solved();
        CircuitSolver b = scaled.Solved();
        for (int v = 0; v < n.Nodes; v++)
            Assert.Equal(a.NodeVolts(v), b.NodeVolts(v), 1e-8);
        Assert.Equal(a.SourceAmperes / k, b.SourceAmperes, 1e-7);
    }

    [Property(MaxTest = 200)]
    public void Order_of_elements_and_nodes_changes_nothing(int seed)
    {
        var random = new Random(seed);
        TestNetwork n = RandomNetworks.Harness(random, 1 + random.Next(60), 5, s_allKinds);
        int[] renamed = [.. Enumerable.Range(0, n.Nodes)];
        int[] conductorOrder = [.. Enumerable.Range(0, n.Conductors.Count)];
        int[] loadOrder = [.. Enumerable.Range(0, n.Loads.Count)];
        random.Shuffle(renamed);
        random.Shuffle(conductorOrder);
        random.Shuffle(loadOrder);
        var shuffled = new TestNetwork(
            n.Nodes,
            renamed[n.Plus],
            renamed[n.Minus],
            n.Emf,
            n.SourceOhms,
            [
                .. conductorOrder.Select(i =>
                    n.Conductors[i] with
                    {
                        A = renamed[n.Conductors[i].A],
                        B = renamed[n.Conductors[i].B],
                    }
                ),
            ],
            [
                .. loadOrder.Select(i =>
                    n.Loads[i] with
                    {
                        Feed = renamed[n.Loads[i].Feed],
                        Return = renamed[n.Loads[i].Return],
                    }
                ),
            ]
        );
        CircuitSolver a = n.Solved();
        CircuitSolver b = shuffled.Solved();
        for (int v = 0; v < n.Nodes; v++)
            Assert.Equal(a.NodeVolts(v), b.NodeVolts(renamed[v]), 1e-9);
        for (int i = 0; i < loadOrder.Length; i++)
            Assert.Equal(a.LoadAmperes(loadOrder[i]), b.LoadAmperes(i), 1e-9);
    }

    private static TestNetwork WithOhms(TestNetwork n, int conductor, double ohms) =>
        n with
        {
            Conductors = [.. n.Conductors.Select((c, i) => i == conductor ? c with { Ohms = ohms } : c)],
        };

    private static Load Scale(Load law, double k) =>
        law.Kind switch
        {
            LampType.Filament or LampType.Halogen => Load.Filament(law.Volts, law.Strength / k, law.Quantity),
            LampType.Led => Load.Led(law.Strength / k, law.Volts, law.Quantity),
            LampType.Fixed => Load.Fixed(law.Strength / k, law.Quantity),
            _ => Load.Resistor(law.Strength * k, law.Quantity),
        };
}
