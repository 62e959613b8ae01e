namespace Lighting.Calc;

/// <summary>Likelihood of readings under one fault, with what is common to all of them filtered along.</summary>
/// <remarks>
/// Four unknowns are common to all readings: the supply's voltage and three directions in which lamps, joints and
/// contacts together lie off the lists (the <see cref="ToleranceDraws"/>). Each is normal beforehand; a Kalman filter
/// brings them along. What of the tolerance these do not cover is each reading's own.
/// </remarks>
internal struct Likelihood
{
    private const int Size = 4;

    // Share of the tolerance's variance that the three draws stand for; the rest is each reading's own.
    private const double Common = 0.8;

    private readonly ReadingScale _scale;
    private State _mean;
    private Square _variance;
    private LogProduct _density;
    private Resemblance _resembling;

    public Likelihood(ReadingScale scale)
    {
        _scale = scale;
        _variance[0] = Math.Pow(scale.SupplyTolerance, 2);
        for (int i = 1; i < Size; i++)
            _variance[i * Size + i] = Common / (Size - 1);
    }

    /// <summary>What the readings say of the battery's voltage, as a share above the list's.</summary>
    public readonly double BatteryMean => _mean[0];

    /// <summary>Variance of <see cref="BatteryMean"/>.</summary>
    public readonly double BatteryVariance => _variance[0];

    /// <summary>Natural logarithm of the likelihood so far.</summary>
    public readonly double Logarithm => _density.Logarithm;

    /// <summary>How far the last reading lay from its prediction, in standard deviations; for a look 0, or 4 when it
    /// hardly can be.</summary>
    public double Distance { get; private set; }

    /// <summary>The value expected of the last reading.</summary>
    public double Expected { get; private set; }

    /// <summary>The same of something that is not listed but shows as this fault does, by the share of the other
    /// readings that it changes: see <see cref="NotListed"/>.</summary>
    public double Resembling(int share) => _resembling[share].Logarithm;

    public void Take(Evidence evidence, in Prediction predicted)
    {
        double blunder = evidence.Blunder(_scale.Blunder),
            density = _scale.BlunderDensity(evidence.Place.Instrument);
        Expected = predicted.Value;
        if (evidence.IsLook)
        {
            double seen = LookScale.Probability(
                (Brightness)(int)evidence.Value,
                predicted.Value,
                Math.Sqrt(predicted.Sigma * predicted.Sigma + predicted.Own * predicted.Own)
            );
            Distance = seen < 0.03 ? 4 : 0;
            // That a lamp looks wrong is what the search began with: it tells nothing apart from what looks alike.
            Add(
                (1 - blunder) * seen + blunder * density,
                evidence.Place.Instrument != Instrument.Visual || (int)evidence.Value == (int)Brightness.Normal
                    ? evidence.Changed
                    : Math.Max(evidence.Changed, (1 - blunder) * seen)
            );
            return;
        }

        State slope = default,
            reach = default;
        (slope[0], slope[1], slope[2], slope[3]) = (
            predicted.Battery,
            predicted.First,
            predicted.Second,
            predicted.Third
        );
        double own = _scale.Sigma(evidence.Place, evidence.Value);
        bool hasDraws = predicted.First != 0 || predicted.Second != 0 || predicted.Third != 0;
        double variance =
                own * own
                + predicted.Own * predicted.Own
                + predicted.Sigma * predicted.Sigma * (hasDraws ? 1 - Common : 1),
            expected = predicted.Value;
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
                reach[i] += _variance[i * Size + j] * slope[j];
            variance += slope[i] * reach[i];
            expected += slope[i] * _mean[i];
        }

        double off = evidence.Value - expected;
        double fits = (1 - blunder) * Math.Exp(-off * off / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance);
        Expected = expected;
        Distance = Math.Abs(off) / Math.Sqrt(variance);
        Add(fits + blunder * density, evidence.Changed);
        if (fits <= blunder * density)
            return;
        for (int i = 0; i < Size; i++)
        {
            double gain = reach[i] / variance;
            _mean[i] += gain * off;
            for (int j = 0; j < Size; j++)
                _variance[i * Size + j] -= gain * reach[j];
        }
    }

    private void Add(double density, double changed)
    {
        _density.Multiply(density);
        for (int k = 0; k < NotListed.Shares; k++)
            _resembling[k].Multiply((1 - NotListed.Changed(k)) * density + NotListed.Changed(k) * changed);
    }

    [System.Runtime.CompilerServices.InlineArray(NotListed.Shares)]
    private struct Resemblance
    {
        private LogProduct _first;
    }

    [System.Runtime.CompilerServices.InlineArray(Size)]
    private struct State
    {
        private double _first;
    }

    [System.Runtime.CompilerServices.InlineArray(Size * Size)]
    private struct Square
    {
        private double _first;
    }

    // The logarithm of a product, taken of many factors at once. The default is of none.
    private struct LogProduct
    {
        private const double Least = 1e-200;

        private double _logarithm;
        private double _product;

        public readonly double Logarithm => _product == 0 ? _logarithm : _logarithm + Math.Log(_product);

        public void Multiply(double factor)
        {
            _product = _product == 0 ? factor : _product * factor;
            if (_product is > Least and < 1 / Least)
                return;
            _logarithm += Math.Log(_product);
            _product = 0;
        }
    }
}
