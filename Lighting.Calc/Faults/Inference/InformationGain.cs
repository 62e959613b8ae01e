using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Expected information gain of a test about the fault: the mutual information of fault and outcome, in
/// bits.</summary>
/// <remarks>D. V. Lindley, "On a measure of the information provided by an experiment", 1956. From memory.</remarks>
internal sealed class InformationGain
{
    /// <summary>Bins an outcome of voltage, current or resistance is sorted into.</summary>
    public const int Bins = 64;

    // The least likely severities that together have this probability are left out.
    private const double Negligible = 0.005;

    private readonly ImmutableArray<int> _of;
    private readonly int _count;
    private readonly ReadingScale _scale;
    private readonly int[] _members;
    private readonly double[] _weights;
    private readonly double[] _joint;
    private readonly double[] _outcome = new double[Bins];
    private int _used = Bins;
    private readonly double _batteryMean;
    private readonly double _batteryVariance;

    public InformationGain(FaultModel model, Hypotheses hypotheses)
    {
        _of = hypotheses.Of;
        _count = hypotheses.Count;
        _scale = new ReadingScale(model.Circuit);
        double passed = 0;
        _members =
        [
            .. Enumerable
                .Range(0, hypotheses.Weights.Length)
                .OrderBy(m => hypotheses.Weights[m])
                .SkipWhile(m => (passed += hypotheses.Weights[m]) < Negligible),
        ];
        _weights = [.. _members.Select(m => hypotheses.Weights[m])];
        _joint = new double[hypotheses.Count * Bins];
        (_batteryMean, _batteryVariance) = (hypotheses.SupplyMean, hypotheses.SupplyVariance);
    }

    /// <summary>Probability of each outcome together with each fault, after <see cref="Bits"/>: row by
    /// family.</summary>
    public ReadOnlySpan<double> Joint => _joint;

    /// <summary>Lowest value of the first bin, after <see cref="Bits"/> of a test that gives a number.</summary>
    public double Lowest { get; private set; }

    /// <summary>Width of a bin.</summary>
    public double Width { get; private set; }

    /// <summary>Expected information of a test in bits.</summary>
    public double Bits(in TestPlace test, Column column)
    {
        Array.Clear(_joint);
        _used = test.Instrument.IsLook() ? 4 : Bins;
        if (test.Instrument.IsLook())
            TakeLooks(column);
        else
            TakeNumbers(test.Instrument, column);
        return Mutual();
    }

    private void TakeLooks(Column column)
    {
        for (int i = 0; i < _members.Length; i++)
        {
            int m = _members[i],
                row = _of[m] * Bins;
            double sigma = Math.Sqrt(column.Sigma[m] * column.Sigma[m] + column.OwnAt(m) * column.OwnAt(m));
            for (int look = 0; look < 4; look++)
            {
                double seen =
                    (1 - _scale.Blunder) * LookScale.Probability((Brightness)look, column.Value[m], sigma)
                    + _scale.Blunder / 4;
                _joint[row + look] += _weights[i] * seen;
            }
        }
    }

    private void TakeNumbers(Instrument instrument, Column column)
    {
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        foreach (int m in _members)
        {
            double reach = 3 * Sigma(instrument, column, m);
            low = Math.Min(low, Mean(column, m) - reach);
            high = Math.Max(high, Mean(column, m) + reach);
        }

        Lowest = low;
        Width = Math.Max(1e-9, (high - low) / Bins);
        for (int i = 0; i < _members.Length; i++)
        {
            int m = _members[i],
                row = _of[m] * Bins;
            double sigma = Sigma(instrument, column, m),
                mean = Mean(column, m);
            int first = Math.Clamp((int)((mean - 3 * sigma - low) / Width), 0, Bins - 1),
                last = Math.Clamp((int)((mean + 3 * sigma - low) / Width), 0, Bins - 1);
            double below = 0;
            for (int b = first; b <= last; b++)
            {
                double upTo = b == last ? 1 : StandardNormal.Cumulative((low + (b + 1) * Width - mean) / sigma);
                _joint[row + b] += _weights[i] * (upTo - below);
                below = upTo;
            }
        }
    }

    /// <summary>What a severity reads, by what is known of the supply.</summary>
    public double Mean(Column column, int m) => column.Value[m] + column.Battery[m] * _batteryMean;

    /// <summary>Standard deviation of what it reads.</summary>
    public double Sigma(Instrument instrument, Column column, int m)
    {
        double own = _scale.Sigma(instrument, column.Value[m]);
        return Math.Sqrt(
            own * own
                + column.Sigma[m] * column.Sigma[m]
                + column.OwnAt(m) * column.OwnAt(m)
                + column.Battery[m] * column.Battery[m] * _batteryVariance
        );
    }

    private double Mutual()
    {
        Array.Clear(_outcome);
        for (int f = 0; f < _count; f++)
            for (int b = 0; b < _used; b++)
                _outcome[b] += _joint[f * Bins + b];
        double bits = 0;
        for (int f = 0; f < _count; f++)
        {
            double family = 0;
            for (int b = 0; b < _used; b++)
                family += _joint[f * Bins + b];
            if (family <= 0)
                continue;
            for (int b = 0; b < _used; b++)
                if (_joint[f * Bins + b] is > 0 and var joint)
                    bits += joint * Math.Log2(joint / (family * _outcome[b]));
        }

        return bits;
    }
}
