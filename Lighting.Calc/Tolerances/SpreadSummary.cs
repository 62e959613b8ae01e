using System.Collections.Immutable;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Percentiles, moments and variance shares of the results of a run.</summary>
/// <remarks>Percentile: the inverse of the empirical distribution function, a value that was drawn, never one between two.</remarks>
internal sealed class SpreadSummary(SampleRun run, ImmutableArray<TolerancePart> parts)
{
    // Under this share of a result its variance is rounding.
    private const double RoundingRelative = 1e-12;

    private readonly int _samples = run.Results[0].Length;

    /// <summary>Sorts out every quantity; the results of the run are reordered.</summary>
    public double[][] Percentiles(int? threads)
    {
        var percentiles = new double[run.Results.Length][];
        Parallel.For(0, percentiles.Length, new ParallelOptions { MaxDegreeOfParallelism = threads ?? -1 }, q =>
        {
            double[] results = run.Results[q];
            percentiles[q] = [.. new[] { 0.05, 0.5, 0.95 }.Select(share => ArrayStatistics.QuantileCustomInplace(results, share, QuantileDefinition.R1))];
        });
        return percentiles;
    }

    public ResultSpread<T> Of<T>(int quantity, double[] percentiles, Func<double, T> unit)
        where T : struct, IQuantity
    {
        double mean = run.Sums.Quantity[quantity] / _samples;
        double variance = Variance(run.Sums.Quantity[quantity], run.Sums.QuantitySquared[quantity]);
        bool isFinite = double.IsFinite(variance) && double.IsFinite(mean);
        return new ResultSpread<T>
        {
            Listed = Known(run.Listed[quantity]),
            Percentile5 = Known(percentiles[0]),
            Median = Known(percentiles[1]),
            Percentile95 = Known(percentiles[2]),
            Mean = isFinite ? unit(run.Listed[quantity] + mean) : null,
            StandardDeviation = isFinite ? unit(Math.Sqrt(variance)) : null,
            Shares = isFinite && Math.Sqrt(variance) > RoundingRelative * Math.Abs(run.Listed[quantity]) ? Shares(quantity, variance) : [],
        };

        T? Known(double value) => double.IsFinite(value) ? unit(value) : null;
    }

    private ImmutableArray<VarianceShare> Shares(int quantity, double variance)
    {
        SampleSums sums = run.Sums;
        var shares = new List<VarianceShare>();
        for (int p = 0; p < parts.Length; p++)
        {
            double partVariance = Variance(sums.Part[p], sums.PartSquared[p]);
            if (partVariance <= 0)
                continue;
            double covariance = (sums.Product[quantity * parts.Length + p] - sums.Quantity[quantity] * sums.Part[p] / _samples) / (_samples - 1);
            double squared = covariance * covariance / (variance * partVariance);
            // A part without any effect has 1/(n − 1) on average; that is taken off, as in the adjusted coefficient of determination.
            double share = 1 - (1 - squared) * (_samples - 1) / (_samples - 2);
            if (share > 0)
                shares.Add(new VarianceShare(parts[p], Ratio.FromDecimalFractions(share)));
        }

        return [.. shares.OrderByDescending(s => s.Share.DecimalFractions)];
    }

    private double Variance(double sum, double squares) => Math.Max(0, (squares - sum * sum / _samples) / (_samples - 1));
}
