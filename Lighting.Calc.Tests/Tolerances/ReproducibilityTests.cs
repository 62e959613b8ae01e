using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>The same seed gives the same bits, whoever works on them.</summary>
public class ReproducibilityTests
{
    [Theory]
    [InlineData("valley-twin")]
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
        double[] few = ToleranceBikes.Sampled(ToleranceBikes.Demo("valley-twin"), new ToleranceOptions { Samples = 100 }).Results[0];
        double[] more = ToleranceBikes.Sampled(ToleranceBikes.Demo("valley-twin"), new ToleranceOptions { Samples = 317 }).Results[0];
        Assert.Equal(few, more[..100]);
    }

    [Fact]
    public void A_sample_does_not_depend_on_those_before_it()
    {
        SampleRun run = ToleranceBikes.Prepared(ToleranceBikes.Demo("valley-twin"), new ToleranceOptions { Samples = 100 }, out SamplingPlan plan);
        var places = new QuantityPlaces(plan);
        double[] alone = Answer(new Sampler(plan, [11.25]), 40);
        var used = new Sampler(plan, [11.25]);
        for (int i = 0; i < 40; i++)
            Answer(used, i);
        Assert.Equal(alone, Answer(used, 40));

        double[] Answer(Sampler sampler, int sample)
        {
            var values = new double[plan.Uncertain.Parts.Length];
            var quantities = new double[places.Quantities];
            run.Draw(sample, values);
            sampler.Answer(values, quantities, new bool[places.Verdicts]);
            return quantities;
        }
    }

    [Fact]
    public void Answering_a_sample_allocates_nothing()
    {
        SampleRun run = ToleranceBikes.Prepared(ToleranceBikes.Demo("valley-twin"), new ToleranceOptions { Samples = 1000 }, out SamplingPlan plan);
        var places = new QuantityPlaces(plan);
        var sampler = new Sampler(plan, [11.25]);
        var values = new double[plan.Uncertain.Parts.Length];
        var quantities = new double[places.Quantities];
        var verdicts = new bool[places.Verdicts];
        Answer(0, 50);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Answer(50, 550);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 500);

        void Answer(int from, int to)
        {
            for (int i = from; i < to; i++)
            {
                run.Draw(i, values);
                sampler.Answer(values, quantities, verdicts);
            }
        }
    }

    private static string Digest(string bike, int? threads, long seed)
    {
        SampleRun run = ToleranceBikes.Sampled(ToleranceBikes.Demo(bike), new ToleranceOptions { Samples = 1500, Seed = seed, Threads = threads });
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (double[] numbers in run.Results.Append(run.Sums.Quantity).Append(run.Sums.QuantitySquared).Append(run.Sums.Product).Append(run.Sums.Part))
            hash.AppendData(MemoryMarshal.AsBytes(numbers.AsSpan()));
        hash.AppendData(MemoryMarshal.AsBytes(run.Sums.Good.AsSpan()));
        return Convert.ToHexString(hash.GetHashAndReset());
    }
}
