using System.Runtime.InteropServices;
using System.Security.Cryptography;
using UnitsNet;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>The same seed gives the same bits, whoever works on them.</summary>
public class ReproducibilityTests
{
    [Theory]
    [InlineData("valley-twin", Traits = ["time", "long"])]
    [InlineData("chapel-single")]
    public void Any_number_of_threads_gives_the_same_bits(string bike)
    {
        string one = Digest(bike, 1, 1);
        Assert.Equal(one, Digest(bike, 2, 1));
        Assert.Equal(one, Digest(bike, 5, 1));
        Assert.Equal(one, Digest(bike, null, 1));
        Assert.NotEqual(one, Digest(bike, 2, 2));
    }

    [Fact]
    public void A_longer_run_begins_with_the_samples_of_a_shorter_one()
    {
        SampledBike[] few = ToleranceBikes.Drawn(
            ToleranceBikes.Demo("valley-twin"),
            new ToleranceOptions { Samples = 100 }
        );
        SampledBike[] more = ToleranceBikes.Drawn(
            ToleranceBikes.Demo("valley-twin"),
            new ToleranceOptions { Samples = 317 }
        );
        Assert.Equal(few.SelectMany(Numbers), more[..100].SelectMany(Numbers));
    }

    [Fact]
    public void A_sample_does_not_depend_on_those_before_it()
    {
        SamplingPlan plan = ToleranceBikes.EliminationPlan(
            ToleranceBikes.Demo("valley-twin"),
            new ToleranceOptions { Samples = 100 }
        );
        double[] alone = Numbers(new Sampler(plan).Solve(Sampler.Values(plan, 40)));
        var used = new Sampler(plan);
        for (int i = 0; i < 40; i++)
            used.Solve(Sampler.Values(plan, i));
        Assert.Equal(alone, Numbers(used.Solve(Sampler.Values(plan, 40))));
    }

    private static string Digest(string bike, int? threads, long seed)
    {
        var options = new ToleranceOptions
        {
            Samples = 1500,
            Seed = seed,
            Threads = threads,
        };
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (SampledBike drawn in ToleranceBikes.Drawn(ToleranceBikes.Demo(bike), options))
            hash.AppendData(MemoryMarshal.AsBytes(Numbers(drawn).AsSpan()));
        ToleranceReport report = ToleranceBikes.Report(ToleranceBikes.Demo(bike), options);
        foreach (LampTolerance lamp in report.Lamps)
            hash.AppendData(MemoryMarshal.AsBytes(Numbers(lamp.Voltage).AsSpan()));
        hash.AppendData(
            MemoryMarshal.AsBytes(report.Verdicts.Select(v => v.Probability.DecimalFractions).ToArray().AsSpan())
        );
        return Convert.ToHexString(hash.GetHashAndReset());
    }

    private static double[] Numbers(SampledBike bike) =>
        [
            .. bike.Values,
            .. bike.MostDropOf,
            .. bike.ContinuousAmperes,
            .. bike.LeastVolts,
            .. bike.MostVolts,
            .. bike.FuseAmperes,
            bike.BreakEvenRpm,
            bike.RideAmpereHours,
        ];

    private static double[] Numbers(ResultSpread<ElectricPotential> spread) =>
        [
            spread.Median!.Value.Volts,
            spread.Mean!.Value.Volts,
            spread.StandardDeviation!.Value.Volts,
            .. spread.Shares.Select(s => s.Share.DecimalFractions),
        ];
}
