using UnitsNet;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>What the samples add up to, against formulas.</summary>
public class MonteCarloTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(77)]
    public void A_linear_network_has_the_mean_and_variance_of_the_closed_form(long seed)
    {
        // I = a·(2·b + 5·c): a the regulator's factor, b and c those of two resistors, all independent with mean 1.
        const int Samples = 40_000;
        const double A = Limits.Regulator,
            B = Limits.Resistor;
        double mean = 7,
            square = (1 + A) * (49 + (4 + 25) * B),
            variance = square - 49;
        ResultSpread<ElectricCurrent> current = ToleranceBikes
            .Report(ToleranceBikes.Resistors(2, 5), new ToleranceOptions { Samples = Samples, Seed = seed })
            .Fuses[0]
            .Current;
        Assert.Equal(mean, current.Mean!.Value.Amperes, 3 * Math.Sqrt(variance / Samples));
        Assert.Equal(
            variance,
            Math.Pow(current.StandardDeviation!.Value.Amperes, 2),
            3 * variance * Math.Sqrt(2.0 / Samples)
        );
        Assert.Equal(mean, current.Listed!.Value.Amperes, 1e-9);
    }

    [Fact]
    public void Variance_shares_of_a_linear_network_are_those_of_the_closed_form_and_add_up_to_all()
    {
        const int Samples = 40_000;
        double regulator = 49 * Limits.Regulator,
            small = 4 * Limits.Resistor,
            large = 25 * Limits.Resistor,
            all = regulator + small + large;
        ResultSpread<ElectricCurrent> current = ToleranceBikes
            .Report(ToleranceBikes.Resistors(2, 5), new ToleranceOptions { Samples = Samples })
            .Fuses[0]
            .Current;
        Assert.Equal(regulator / all, Share(current, "regulator volts"), 0.02);
        Assert.Equal(small / all, Share(current, "lamp 'heater 1'"), 0.02);
        Assert.Equal(large / all, Share(current, "lamp 'heater 2'"), 0.02);
        Assert.Equal(1, current.Shares.Sum(s => s.Share.DecimalFractions), 0.02);
        Assert.Equal(current.Shares.Max(s => s.Share.DecimalFractions), current.MattersMost!.Share.DecimalFractions);
    }

    [Theory]
    [InlineData("valley-twin", Traits = ["time", "long"])]
    [InlineData("chapel-single")]
    public void Variance_shares_and_what_they_leave_add_up_to_all(string bike)
    {
        ToleranceReport report = ToleranceBikes.Report(
            ToleranceBikes.Demo(bike),
            new ToleranceOptions { Samples = 4000 }
        );
        foreach (LampTolerance lamp in report.Lamps)
        {
            Sums(lamp.Voltage.Shares, lamp.Voltage.Unexplained);
            Sums(lamp.Drop.Shares, lamp.Drop.Unexplained);
            if (lamp.RelativeLight is { } light)
                Sums(light.Shares, light.Unexplained);
        }

        foreach (FuseTolerance fuse in report.Fuses)
            Sums(fuse.Current.Shares, fuse.Current.Unexplained);

        static void Sums(IReadOnlyCollection<VarianceShare> shares, Ratio rest)
        {
            double sum = shares.Sum(s => s.Share.DecimalFractions);
            // Each of some forty shares is off by about twice its root over that of the samples.
            Assert.InRange(sum, 0.5, 1.06);
            Assert.Equal(Math.Max(1, sum), sum + rest.DecimalFractions, 1e-12);
        }
    }

    [Fact]
    [Trait("time", "long")]
    public void Small_spreads_propagate_to_first_order()
    {
        Bike bike = ToleranceBikes.Demo("valley-twin");
        var options = new ToleranceOptions
        {
            Samples = 20_000,
            Scale = Ratio.FromPercent(5),
            Check = new CheckOptions
            {
                When = Condition.Parse("ignition=on; lights=main; dip=high; brake=on; indicators=left"),
            },
        };
        var uncertain = new UncertainBike(bike, null, EngineState.Running, options.Scale.DecimalFractions);
        ToleranceReport report = ToleranceBikes.Report(bike, options);
        double fuse = 0,
            headlamp = 0;
        for (int part = 0; part < uncertain.Parts.Length; part++)
        {
            PartSpread spread = uncertain.Parts[part].Spread;
            double step = (spread.High - spread.Low) / 4,
                sigma = Sigma(new QuantileTable(spread));
            (double fuseUp, double lampUp) = At(part, step);
            (double fuseDown, double lampDown) = At(part, -step);
            fuse += Math.Pow((fuseUp - fuseDown) / (2 * step) * sigma, 2);
            headlamp += Math.Pow((lampUp - lampDown) / (2 * step) * sigma, 2);
        }

        double voltageSigma = report
            .Lamps.Single(l => l.Lamp.Lamp == "headlamp high")
            .Voltage.StandardDeviation!.Value.Volts;
        double currentSigma = report.Fuses[0].Current.StandardDeviation!.Value.Amperes;
        Assert.Equal(Math.Sqrt(headlamp), voltageSigma, 0.025 * voltageSigma);
        Assert.Equal(Math.Sqrt(fuse), currentSigma, 0.025 * currentSigma);

        (double Fuse, double Lamp) At(int part, double step)
        {
            double[] values = uncertain.Listed();
            values[part] += step;
            BikeSolution solution = BikeSolution.Solve(
                uncertain.With(values),
                uncertain.CheckOptions(options),
                TestContext.Current.CancellationToken
            );
            return (
                solution.Points[0].Fuses[0].Current.Amperes,
                solution.Points[0].Lamps.Single(l => l.Lamp.Lamp == "headlamp high").Voltage.Volts
            );
        }

        static double Sigma(QuantileTable table)
        {
            double[] values = [.. Enumerable.Range(0, 20_000).Select(i => table.At((i + 0.5) / 20_000))];
            double mean = values.Average();
            return Math.Sqrt(values.Average(v => (v - mean) * (v - mean)));
        }
    }

    [Fact]
    [Trait("time", "long")]
    public void Percentiles_of_fewer_bikes_lie_where_those_of_many_say_they_must()
    {
        // The share of bikes at or under the percentile of n bikes is off by no more than 3.5 standard errors √(p·(1 −
        // p)/n).
        Bike bike = ToleranceBikes.Demo("valley-twin");
        Condition when = Condition.Parse("ignition=on; lights=main; dip=high; brake=on; indicators=left");
        int lamp = bike.Lamps.IndexOf(bike.Lamps.Single(l => l.Lamp == "headlamp high"));
        double[] many =
        [
            .. ToleranceBikes
                .Drawn(
                    bike,
                    new ToleranceOptions
                    {
                        Samples = 20_000,
                        Seed = 99,
                        Check = new CheckOptions { When = when },
                    }
                )
                .Select(b => b.LastingVolts[lamp]),
        ];
        foreach (int samples in new[] { 500, 2000, 4000 })
        {
            ResultSpread<ElectricPotential> volts = ToleranceBikes
                .Report(bike, new ToleranceOptions { Samples = samples, Check = new CheckOptions { When = when } })
                .Lamps.Single(l => l.Lamp.Lamp == "headlamp high")
                .Voltage;
            foreach (
                (double p, ElectricPotential? value) in new[]
                {
                    (0.05, volts.Percentile5),
                    (0.5, volts.Median),
                    (0.95, volts.Percentile95),
                }
            )
            {
                double share = (double)many.Count(v => v <= value!.Value.Volts) / many.Length;
                Assert.Equal(p, share, 3.5 * Math.Sqrt(p * (1 - p) * (1.0 / samples + 1.0 / many.Length)));
            }
        }
    }

    private static double Share(ResultSpread<ElectricCurrent> spread, string part) =>
        spread.Shares.Single(s => s.Part.Name == part).Share.DecimalFractions;

    private static class Limits
    {
        public const double Regulator =
            ToleranceBikes.CutVariance * ToleranceBikes.RegulatorLimit * ToleranceBikes.RegulatorLimit / 4;
        public const double Resistor =
            ToleranceBikes.CutVariance * ToleranceBikes.ResistorLimit * ToleranceBikes.ResistorLimit / 4;
    }
}
