using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

/// <summary>Harnesses of so many runs that the search goes by the slope of the drops.</summary>
public class LongListTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Sizes_of_many_runs_hold_the_drop_with_less_copper_than_one_size(int seed)
    {
        var network = new HarnessNetwork(Tree(new Random(seed), lamps: 70));
        WireSizingResult few = HarnessSizing.Size(network, null, TestContext.Current.CancellationToken);
        WireSizingResult one = HarnessSizing.Size(
            network,
            new WireSizingOptions { MostSizes = 1 },
            TestContext.Current.CancellationToken
        );
        Assert.True(few.IsFeasible && few.Unmet.IsEmpty, few.Explanation);
        Assert.InRange(few.Runs.Select(r => r.Chosen).Distinct().Count(), 2, WireSizingOptions.FewSizes);
        Assert.All(few.Lamps, l => Assert.True(l.DropChosen <= l.AllowedDrop));
        Assert.Contains(few.Runs, r => r.Limit == SizingConstraint.Drop);
        Assert.True(few.CopperChosen < 0.8 * one.CopperChosen);
    }

    [Fact]
    public void The_slope_of_a_drop_is_that_of_two_solutions()
    {
        var random = new Random(3);
        var network = new HarnessNetwork(Tree(random, lamps: 12));
        var solver = new CircuitSolver(network.Circuit);
        solver.SetSource(13.5, 0.01);
        double[] ohms = [.. network.RunConductors.Select(_ => 0.01 + 0.05 * random.NextDouble())];
        for (int i = 0; i < ohms.Length; i++)
            solver.SetConductor(network.RunConductors[i], ohms[i]);
        for (int i = 0; i < network.Loads.Length; i++)
            solver.SetLoad(network.Loads[i], CircuitLoad.Of(network.Bike.Lamps[i].Specification, 1, Earth.Negative));
        int[] lamps = [network.Loads[4], network.Loads[11]];
        Assert.Equal(SolveStatus.Solved, solver.Solve());
        double[] slopes = solver.VoltsPerOhm(lamps, network.RunConductors);
        Assert.Contains(slopes, s => s < -0.1);
        const double Change = 1e-5;
        for (int i = 0; i < ohms.Length; i++)
            Assert.Equal((Volts(i, Change) - Volts(i, -Change)) / (2 * Change), slopes[i], 1e-5);

        double Volts(int run, double change)
        {
            solver.SetConductor(network.RunConductors[run], ohms[run] + change);
            Assert.Equal(SolveStatus.Solved, solver.Solve());
            double volts = lamps.Sum(solver.LoadVolts);
            solver.SetConductor(network.RunConductors[run], ohms[run]);
            return volts;
        }
    }

    [Fact]
    public void Volts_with_other_ohms_are_those_of_a_solution_nearly()
    {
        var random = new Random(4);
        var network = new HarnessNetwork(Tree(random, lamps: 30));
        var solver = new CircuitSolver(network.Circuit);
        solver.SetSource(13.5, 0.006);
        double[] ohms = [.. network.RunConductors.Select(_ => 0.003 + 0.004 * random.NextDouble())];
        for (int i = 0; i < ohms.Length; i++)
            solver.SetConductor(network.RunConductors[i], ohms[i]);
        for (int i = 0; i < network.Loads.Length; i++)
            solver.SetLoad(network.Loads[i], CircuitLoad.Of(network.Bike.Lamps[i].Specification, 1, Earth.Negative));
        int[] nodes = [.. Enumerable.Range(0, network.Circuit.NodeCount)];
        for (int i = 0; i < ohms.Length; i++)
        {
            solver.SetConductor(network.RunConductors[i], ohms[i]);
            Assert.Equal(SolveStatus.Solved, solver.Solve());
            double[] before = [.. nodes.Select(solver.NodeVolts)];
            double[] told = solver.NodeVoltsWith(network.RunConductors[i], 2.5 * ohms[i])!;
            solver.SetConductor(network.RunConductors[i], 2.5 * ohms[i]);
            Assert.Equal(SolveStatus.Solved, solver.Solve());
            double greatest = nodes.Max(n => Math.Abs(solver.NodeVolts(n) - before[n]));
            Assert.All(nodes, n => Assert.Equal(solver.NodeVolts(n), told[n], 0.05 * greatest + 1e-9));
            solver.SetConductor(network.RunConductors[i], ohms[i]);
        }
    }

    // Feed and earth branch side by side, a lamp at each place; two places on the way are joined by a second earth.
    private static Bike Tree(Random random, int lamps)
    {
        int[] parent = [.. Enumerable.Range(0, lamps).Select(i => i == 0 ? -1 : random.Next(Math.Max(0, i - 4), i))];
        return new Bike
        {
            BatteryResistance = ElectricResistance.FromMilliohms(6),
            AllowedDrop = Ratio.FromPercent(3),
            Runs =
            [
                .. parent.Select((p, i) => Wire("feed", p < 0 ? Bike.BatteryPlus : $"feed {p}", i)),
                .. parent.Select((p, i) => Wire("earth", p < 0 ? Bike.BatteryMinus : $"earth {p}", i)),
                Wire("earth", $"earth {lamps - 1}", 1) with { Name = "second earth" },
            ],
            Lamps =
            [
                .. parent.Select(
                    (_, i) =>
                        new FittedLamp
                        {
                            Circuit = "test",
                            Lamp = $"lamp {i}",
                            Specification = LampSpecification.FromPower(
                                i % 3 == 0 ? LampType.Led : LampType.Filament,
                                ElectricPotential.FromVolts(12),
                                Power.FromWatts(0.3 + random.NextDouble())
                            ),
                            Feed = $"feed {i}",
                            Return = $"earth {i}",
                        }
                ),
            ],
        };

        Run Wire(string side, string from, int place) =>
            new()
            {
                Name = $"{side} wire {place}",
                From = from,
                To = $"{side} {place}",
                Wire = WireTable.Of(WireConstruction.MetricCable)[5],
                Length = Length.FromMeters(0.1 + 0.3 * random.NextDouble()),
            };
    }
}
