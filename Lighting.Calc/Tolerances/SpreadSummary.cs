using System.Collections.Immutable;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Percentiles, moments and variance shares of the sampled bikes, summed about the listed bike in the order of
/// the samples.</summary>
/// <remarks>Percentile: the inverse of the empirical distribution function, a value that was drawn, never one between
/// two.</remarks>
internal sealed class SpreadSummary
{
    // Under this share of a result its variance is rounding.
    private const double RoundingRelative = 1e-12;

    private readonly ImmutableArray<TolerancePart> _parts;
    private readonly SampledBike _listed;
    private readonly SampledBike[] _drawn;
    private readonly double[] _partSum;
    private readonly double[] _partVariance;

    public SpreadSummary(ImmutableArray<TolerancePart> parts, SampledBike listed, SampledBike[] drawn)
    {
        (_parts, _listed, _drawn) = (parts, listed, drawn);
        _partSum = new double[parts.Length];
        _partVariance = new double[parts.Length];
        for (int p = 0; p < parts.Length; p++)
        {
            double squares = 0;
            foreach (SampledBike bike in drawn)
            {
                double deviation = bike.Values[p] - listed.Values[p];
                _partSum[p] += deviation;
                squares += deviation * deviation;
            }

            _partVariance[p] = Variance(_partSum[p], squares);
        }
    }

    /// <summary>How a result spreads.</summary>
    /// <param name="result">The result of a bike; infinity where it has none.</param>
    /// <param name="unit">Its quantity.</param>
    public ResultSpread<T> Of<T>(Func<SampledBike, double> result, Func<double, T> unit)
        where T : struct, IQuantity
    {
        double listed = result(_listed),
            sum = 0,
            squares = 0;
        var results = new double[_drawn.Length];
        var products = new double[_parts.Length];
        for (int i = 0; i < results.Length; i++)
        {
            results[i] = result(_drawn[i]);
            double deviation = results[i] - listed;
            sum += deviation;
            squares += deviation * deviation;
            double[] values = _drawn[i].Values;
            for (int p = 0; p < products.Length; p++)
                products[p] += deviation * (values[p] - _listed.Values[p]);
        }

        double variance = Variance(sum, squares);
        bool isFinite = double.IsFinite(variance);
        return new ResultSpread<T>
        {
            Listed = Known(listed),
            Percentile5 = Percentile(0.05),
            Median = Percentile(0.5),
            Percentile95 = Percentile(0.95),
            Mean = isFinite ? unit(listed + sum / results.Length) : null,
            StandardDeviation = isFinite ? unit(Math.Sqrt(variance)) : null,
            Shares =
                isFinite && Math.Sqrt(variance) > RoundingRelative * Math.Abs(listed)
                    ? Shares(sum, variance, products)
                    : [],
        };

        T? Known(double value) => double.IsFinite(value) ? unit(value) : null;

        T? Percentile(double share) =>
            Known(ArrayStatistics.QuantileCustomInplace(results, share, QuantileDefinition.R1));
    }

    private ImmutableArray<VarianceShare> Shares(double sum, double variance, double[] products)
    {
        var shares = new List<VarianceShare>();
        int samples = _drawn.Length;
        for (int p = 0; p < products.Length; p++)
        {
            if (_partVariance[p] <= 0)
                continue;
            double covariance = (products[p] - sum * _partSum[p] / samples) / (samples - 1);
            double squared = covariance * covariance / (variance * _partVariance[p]);
            // A part without any effect has 1/(n − 1) on average; that is subtracted, as in the adjusted coefficient of
            // determination.
            double share = 1 - (1 - squared) * (samples - 1) / (samples - 2);
            if (share > 0)
                shares.Add(new VarianceShare(_parts[p], Ratio.FromDecimalFractions(share)));
        }

        return [.. shares.OrderByDescending(s => s.Share.DecimalFractions)];
    }

    // Math.Max keeps what is not a number: the variance of results that some bikes do not have.
    private double Variance(double sum, double squares) =>
        Math.Max(0, (squares - sum * sum / _drawn.Length) / (_drawn.Length - 1));
}
