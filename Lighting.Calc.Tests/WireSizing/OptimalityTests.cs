using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

public sealed class OptimalityTests(ITestOutputHelper output)
{
    private static readonly int[] MinimumGauges = [16, 14];

    [Theory]
    [InlineData(1)]
    [InlineData(2, Traits = ["time", "long"])]
    [InlineData(3, Traits = ["time", "long"])]
    [InlineData(4, Traits = ["time", "long"])]
    public void The_choice_needs_no_more_copper_than_the_best_of_every_combination(int seed)
    {
        var random = new Random(seed);
        int solved = 0, none = 0, loops = 0, drop = 0, shorts = 0, drivers = 0, ties = 0;
        for (int n = 0; n < 75; n++)
        {
            int runs = 2 + random.Next(4);
            Bike bike = RandomHarness.Make(random, runs);
            int minimum = runs == 5 ? 14 : MinimumGauges[random.Next(2)];
            var options = new WireSizingOptions
            {
                Family = WireConstruction.SolidGauge,
                MinimumArea = AmericanWireGauge.Solid(minimum).CopperArea - Area.FromSquareMillimeters(1e-6),
                CountBatteryDrop = random.Next(3) > 0,
                MostBranches = 1_000_000,
                Fuses = new FuseOptions { LongestShort = random.Next(3) == 0 ? Duration.FromSeconds(0.15 + 0.2 * random.NextDouble()) : null },
            };
            ExhaustiveSizing.Answer? expected = ExhaustiveSizing.Of(bike, options, [.. Enumerable.Range(0, 8).Select(i => AmericanWireGauge.Solid(18 - 2 * i))]);
            WireSizingResult actual = HarnessSizing.Size(new HarnessNetwork(bike), options, TestContext.Current.CancellationToken);
            Assert.True(actual.IsProven, $"seed {seed}, harness {n}: not proven after {actual.Branches} branches");
            Assert.True(actual.IsFeasible == (expected is not null), $"seed {seed}, harness {n}: {actual.Explanation}");
            if (expected is null)
            {
                none++;
                continue;
            }

            Assert.True(Math.Abs(actual.CopperChosen!.Value.CubicCentimeters - expected.Copper) <= 1e-8 * expected.Copper + 1e-12, $"seed {seed}, harness {n}: {actual.CopperChosen.Value.CubicCentimeters} cm³, but {expected.Copper} cm³ does it");
            if (bike.Runs.All(r => r.Length.Meters > 0))
            {
                Assert.Equal((expected.Different, expected.Changed), (actual.Runs.Select(r => r.Chosen).Distinct().Count(), actual.Runs.Count(r => r.Chosen != r.Run.Wire)));
                ties++;
            }

            solved++;
            loops += new DropBounds(new SizingProblem(new HarnessNetwork(bike), options)).LoopRuns.Length > 0 ? 1 : 0;
            drop += actual.Runs.Any(r => r.Limit == SizingConstraint.Drop) ? 1 : 0;
            shorts += actual.Runs.Any(r => r.Limit == SizingConstraint.Short) ? 1 : 0;
            drivers += bike.Lamps.Any(l => l.Specification.Type == Lighting.Calc.LampType.Led) ? 1 : 0;
        }

        output.WriteLine($"{solved} solved, {none} without a choice, {loops} with loops, {drop} limited by drop, {shorts} by a short, {drivers} with drivers, {ties} compared in ties");
        Assert.True(solved >= 35 && none >= 3 && loops >= 4 && drop >= 15 && shorts >= 1 && drivers >= 10, "The harnesses do not cover what they should.");
    }

    [Fact]
    [Trait("time", "long")]
    public void In_loops_too_the_choice_needs_no_more_copper_than_the_best_of_every_combination()
    {
        var random = new Random(21);
        int drop = 0;
        for (int n = 0; n < 60; n++)
        {
            Bike bike = RandomHarness.Ring(random);
            var options = new WireSizingOptions { Family = WireConstruction.SolidGauge, MinimumArea = AmericanWireGauge.Solid(16).CopperArea - Area.FromSquareMillimeters(1e-6), MostBranches = 1_000_000 };
            ExhaustiveSizing.Answer? expected = ExhaustiveSizing.Of(bike, options, [.. Enumerable.Range(0, 8).Select(i => AmericanWireGauge.Solid(18 - 2 * i))]);
            WireSizingResult actual = HarnessSizing.Size(new HarnessNetwork(bike), options, TestContext.Current.CancellationToken);
            Assert.True(actual.IsProven, $"harness {n}");
            Assert.True(actual.IsFeasible == (expected is not null), $"harness {n}: {actual.Explanation}");
            Assert.Equal(expected?.Copper ?? 0, actual.CopperChosen?.CubicCentimeters ?? 0, 9);
            drop += actual.Runs.Any(r => r.Limit == SizingConstraint.Drop) ? 1 : 0;
        }

        Assert.True(drop >= 30, $"Only {drop} are limited by drop.");
    }
}
