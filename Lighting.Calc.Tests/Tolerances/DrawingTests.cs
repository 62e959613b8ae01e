using FsCheck.Xunit;
using UnitsNet;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>The numbers drawn: the generator and the tabulated distributions.</summary>
public class DrawingTests
{
    // The first output of SplitMix64 from the state 0, as its authors' reference program prints it (from memory; found
    // alike by a separate program in whole numbers).
    [Fact]
    public void The_generator_gives_the_published_first_number() =>
        Assert.Equal(0xE220A8397B1DCDAFUL, SampleStream.Mix(0x9E3779B97F4A7C15UL));

    [Property]
    public bool A_number_lies_from_zero_to_below_one(long seed, int sample, int parameter) =>
        new SampleStream(seed, sample & int.MaxValue).Uniform(parameter & 0xFFFF) is >= 0 and < 1;

    [Fact]
    public void Seeds_samples_and_parameters_all_change_the_number()
    {
        var seen = new HashSet<ulong>();
        for (int seed = 0; seed < 20; seed++)
            for (int sample = 0; sample < 50; sample++)
                for (int parameter = 0; parameter < 20; parameter++)
                    Assert.True(seen.Add(new SampleStream(seed, sample).Bits(parameter)));
    }

    [Fact]
    public void Numbers_of_neighbouring_samples_and_parameters_are_even_and_do_not_go_together()
    {
        const int Count = 100_000;
        double sum = 0,
            squares = 0,
            next = 0,
            other = 0;
        for (int i = 0; i < Count; i++)
        {
            double here = new SampleStream(1, i).Uniform(0) - 0.5;
            sum += here;
            squares += here * here;
            next += here * (new SampleStream(1, i + 1).Uniform(0) - 0.5);
            other += here * (new SampleStream(1, i).Uniform(1) - 0.5);
        }

        double sigma = Math.Sqrt(1.0 / 12 / Count);
        Assert.Equal(0, sum / Count, 4 * sigma);
        Assert.Equal(1.0 / 12, squares / Count, 4 * Math.Sqrt(1.0 / 180 / Count));
        Assert.Equal(0, next / Count, 4 * Math.Sqrt(1.0 / 144 / Count));
        Assert.Equal(0, other / Count, 4 * Math.Sqrt(1.0 / 144 / Count));
    }

    [Theory]
    [InlineData("uniform", 1.0 / 12)]
    [InlineData("triangular", 1.0 / 24)]
    [InlineData("normal", ToleranceBikes.CutVariance / 16)]
    public void A_tabulated_distribution_has_the_mean_and_variance_of_its_formula(
        string shape,
        double varianceOfUnitWidth
    )
    {
        PartSpread spread = Spread(shape, 10, 10, "%");
        (double mean, double variance) = Moments(new QuantileTable(spread));
        Assert.Equal(1, mean, 1e-8);
        Assert.Equal(varianceOfUnitWidth * 0.2 * 0.2, variance, 1e-3 * variance);
    }

    [Fact]
    public void The_lognormal_has_its_middle_at_the_listed_value_and_its_logarithm_the_variance_of_the_cut_normal()
    {
        var table = new QuantileTable(Spread("lognormal", 3, 3, "times"));
        Assert.Equal(1, table.At(0.5), 1e-7);
        (_, double variance) = Moments(table, Math.Log);
        Assert.Equal(ToleranceBikes.CutVariance * Math.Pow(Math.Log(3) / 2, 2), variance, 1e-3 * variance);
    }

    [Theory]
    [InlineData("uniform", "%", 8, 0, 0.92, 1)]
    [InlineData("triangular", "K", 20, 30, -20, 30)]
    [InlineData("normal", "%", 6, 10, 0.94, 1.1)]
    [InlineData("lognormal", "times", 3, 2, 1.0 / 3, 2)]
    public void A_tabulated_distribution_rises_from_its_lower_limit_to_its_upper(
        string shape,
        string unit,
        double minus,
        double plus,
        double low,
        double high
    )
    {
        var table = new QuantileTable(Spread(shape, minus, plus, unit));
        double last = table.At(0);
        Assert.Equal(low, last, 1e-7);
        Assert.Equal(high, table.At(1 - 1e-15), 1e-7);
        for (double p = 0; p < 1; p += 1.0 / 10_000)
        {
            Assert.True(table.At(p) >= last);
            last = table.At(p);
        }
    }

    [Fact]
    public void Every_row_of_the_table_of_tolerances_is_a_spread()
    {
        foreach (TableRow row in PublishedTable.Load("tolerances").Read())
        {
            PartSpread spread = PartSpread.Of(row, row.NumberOrNull("minus") is null ? Ratio.FromPercent(6) : null, 1);
            Assert.True(
                spread.Low < spread.High && spread.Low <= spread.Listed && spread.Listed <= spread.High,
                row.Text("part")
            );
            Assert.NotEmpty(spread.Limits);
        }
    }

    private static (double Mean, double Variance) Moments(QuantileTable table, Func<double, double>? of = null)
    {
        const int Count = 400_000;
        double[] values =
        [
            .. Enumerable.Range(0, Count).Select(i => table.At((i + 0.5) / Count)).Select(v => of?.Invoke(v) ?? v),
        ];
        double mean = values.Average();
        return (mean, values.Average(v => (v - mean) * (v - mean)));
    }

    private static PartSpread Spread(string shape, double minus, double plus, string unit) =>
        PartSpread.Of(
            PublishedTable
                .Parse(
                    "probe",
                    FormattableString.Invariant($"shape,minus,plus,unit,source\n{shape},{minus},{plus},{unit},probe\n")
                )
                .Read()
                .Single(),
            null,
            1
        );
}
