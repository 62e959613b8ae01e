using System.Buffers;
using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Expected information gain of a test about the group that the fault is in: the mutual information of group
/// and outcome, in bits.</summary>
/// <remarks>D. V. Lindley, "On a measure of the information provided by an experiment", 1956. From memory.</remarks>
internal sealed class InformationGain : IDisposable
{
    /// <summary>Bins an outcome of voltage, current or resistance is sorted into.</summary>
    public const int Bins = 64;

    // Looks at several lamps that are less likely than this together are left out.
    private const double LeastLooks = 0.002;

    private readonly ShortList _list;
    private readonly ReadingScale _scale;
    private readonly double[] _joint;
    private readonly ImmutableArray<int> _groupOf;
    private readonly int _groups;
    private readonly double[] _ofGroups;
    private readonly double _batteryMean;
    private readonly double _batteryVariance;

    public InformationGain(FaultModel model, Hypotheses hypotheses)
    {
        _list = hypotheses.List;
        (_groupOf, _groups) = (hypotheses.GroupOf, hypotheses.Groups);
        _ofGroups = ArrayPool<double>.Shared.Rent(_groups * Bins);
        _scale = new ReadingScale(model.Circuit);
        // For each thread and choice of a test: rented, since large arrays are collected with all others.
        _joint = ArrayPool<double>.Shared.Rent(_list.Count * Bins);
        (_batteryMean, _batteryVariance) = (hypotheses.SupplyMean, hypotheses.SupplyVariance);
    }

    /// <summary>Probability of each outcome together with each fault, after <see cref="Bits"/>: row by family, each
    /// with <see cref="Used"/> outcomes.</summary>
    public ReadOnlySpan<double> Joint => _joint.AsSpan(0, _list.Count * Used);

    /// <summary>Number of outcomes of the test, after <see cref="Bits"/>.</summary>
    public int Used { get; private set; } = Bins;

    /// <summary>Lowest value of the first bin, after <see cref="Bits"/> of a test that gives a number.</summary>
    public double Lowest { get; private set; }

    /// <summary>Width of a bin.</summary>
    public double Width { get; private set; }

    /// <summary>Gives the room back.</summary>
    public void Dispose()
    {
        ArrayPool<double>.Shared.Return(_joint);
        ArrayPool<double>.Shared.Return(_ofGroups);
    }

    /// <summary>Expected information of a test in bits.</summary>
    public double Bits(in TestPlace test, Column column)
    {
        Used = test.Instrument.IsLook() ? 4 : Bins;
        Array.Clear(_joint, 0, _list.Count * Used);
        if (test.Instrument.IsLook())
            TakeLooks(column);
        else
            TakeNumbers(test.Instrument, column);
        return Mutual();
    }

    /// <summary>What the lamps of a round look like, each with the probability of every fault then, after
    /// <see cref="BitsOfRound"/>; first, without looks, what hardly happens.</summary>
    public List<(Brightness[] Looks, double[] Joint)> Round { get; } = [];

    /// <summary>Expected information of a look at several lamps at once, in bits.</summary>
    /// <param name="looks">Indexes of the looks at single lamps.</param>
    /// <param name="columns">What they show.</param>
    public double BitsOfRound(int[] looks, Column[] columns)
    {
        Round.Clear();
        if (looks.Length < 2)
            return 0;
        var seen = new double[looks.Length][];
        for (int l = 0; l < looks.Length; l++)
        {
            Column column = columns[looks[l]];
            seen[l] = new double[_list.Weights.Length * 4];
            for (int m = 0; m < _list.Weights.Length; m++)
            {
                double sigma = Math.Sqrt(column.Sigma[m] * column.Sigma[m] + column.OwnAt(m) * column.OwnAt(m));
                for (int look = 0; look < 4; look++)
                    seen[l][m * 4 + look] =
                        (1 - _scale.Blunder) * LookScale.Probability((Brightness)look, column.Value[m], sigma)
                        + 0.25 * _scale.Blunder;
            }
        }

        Round.Add(([], new double[_list.Count]));
        Branch([.. _list.Weights], [.. _list.Resembling], new Brightness[looks.Length], 0, seen);
        double[] joint = new double[_groups * Round.Count];
        for (int o = 0; o < Round.Count; o++)
            for (int f = 0; f < _list.Count; f++)
                joint[_groupOf[f] * Round.Count + o] += Round[o].Joint[f];
        return Mutual(joint, Round.Count);
    }

    // The first outcome is what hardly happens.
    private void TakeRest(double[] listed, double[] resembling)
    {
        double[] rest = Round[0].Joint;
        for (int m = 0; m < listed.Length; m++)
            rest[_list.Of[m]] += _list.IsBroad[m] ? resembling.Sum() : listed[m];
    }

    // One lamp after the other; looks that hardly go together are left out.
    private void Branch(double[] listed, double[] resembling, Brightness[] looks, int lamp, double[][] seen)
    {
        if (lamp == seen.Length)
        {
            double[] joint = new double[_list.Count];
            double notListed = resembling.Sum();
            for (int m = 0; m < listed.Length; m++)
                joint[_list.Of[m]] += _list.IsBroad[m] ? notListed : listed[m];
            Round.Add(([.. looks], joint));
            return;
        }

        double[] here = seen[lamp];
        for (int look = 0; look < 4; look++)
        {
            double changed =
                _list.Changed
                * (
                    NotListed.Healthy * here[look]
                    + (1 - NotListed.Healthy) * ReadingScale.BroadLook((Brightness)look)
                );
            var left = new double[listed.Length];
            var like = new double[listed.Length];
            double sum = 0;
            for (int m = 0; m < left.Length; m++)
            {
                double p = here[m * 4 + look];
                if (!_list.IsBroad[m])
                    sum += left[m] = listed[m] * p;
                sum += like[m] = resembling[m] * ((1 - _list.Changed) * p + changed);
            }

            if (sum < LeastLooks)
            {
                TakeRest(left, like);
                continue;
            }

            looks[lamp] = (Brightness)look;
            Branch(left, like, looks, lamp + 1, seen);
        }
    }

    private void TakeLooks(Column column)
    {
        Span<double> like = stackalloc double[4],
            healthy = stackalloc double[4];
        int broad = -1;
        double resembling = 0;
        for (int m = 0; m < _list.Weights.Length; m++)
        {
            if (_list.IsBroad[m])
            {
                broad = m;
                continue;
            }

            int row = _list.Of[m] * Used;
            double sigma = Math.Sqrt(column.Sigma[m] * column.Sigma[m] + column.OwnAt(m) * column.OwnAt(m));
            resembling += _list.Resembling[m];
            for (int look = 0; look < 4; look++)
            {
                double seen =
                    (1 - _scale.Blunder) * LookScale.Probability((Brightness)look, column.Value[m], sigma)
                    + 0.25 * _scale.Blunder;
                _joint[row + look] += _list.Weights[m] * seen;
                like[look] += _list.Resembling[m] * seen;
                if (m == 0)
                    healthy[look] = seen;
            }
        }

        if (broad < 0 || resembling <= 0)
            return;
        for (int look = 0; look < 4; look++)
            _joint[_list.Of[broad] * Used + look] +=
                _list.Weights[broad]
                * (
                    (1 - _list.Changed) * like[look] / resembling
                    + _list.Changed
                        * (
                            NotListed.Healthy * healthy[look]
                            + (1 - NotListed.Healthy) * ReadingScale.BroadLook((Brightness)look)
                        )
                );
    }

    private void TakeNumbers(Instrument instrument, Column column)
    {
        double low = double.PositiveInfinity,
            high = double.NegativeInfinity;
        for (int m = 0; m < _list.Weights.Length; m++)
        {
            double reach = 3 * Sigma(instrument, column, m);
            low = Math.Min(low, Mean(column, m) - reach);
            high = Math.Max(high, Mean(column, m) + reach);
        }

        Lowest = low;
        Width = Math.Max(1e-9, (high - low) / Bins);
        Span<double> like = stackalloc double[Bins],
            healthy = stackalloc double[Bins];
        int broad = -1;
        double resembling = 0;
        for (int m = 0; m < _list.Weights.Length; m++)
        {
            if (_list.IsBroad[m])
            {
                broad = m;
                continue;
            }

            int row = _list.Of[m] * Used;
            double sigma = Sigma(instrument, column, m),
                mean = Mean(column, m);
            int first = Math.Clamp((int)((mean - 3 * sigma - low) / Width), 0, Bins - 1),
                last = Math.Clamp((int)((mean + 3 * sigma - low) / Width), 0, Bins - 1);
            double below = 0;
            resembling += _list.Resembling[m];
            for (int b = first; b <= last; b++)
            {
                double upTo = b == last ? 1 : StandardNormal.Cumulative((low + (b + 1) * Width - mean) / sigma);
                _joint[row + b] += _list.Weights[m] * (upTo - below);
                like[b] += _list.Resembling[m] * (upTo - below);
                if (m == 0)
                    healthy[b] = upTo - below;
                below = upTo;
            }
        }

        if (broad >= 0 && resembling > 0)
            TakeNotListed(instrument, broad, like, resembling, healthy);
    }

    // What something not listed makes of a reading: as what it resembles, as on a healthy bike, or anything, most of
    // the scale and more at its ends.
    private void TakeNotListed(
        Instrument instrument,
        int broad,
        Span<double> like,
        double resembling,
        Span<double> healthy
    )
    {
        int row = _list.Of[broad] * Used;
        double sum = 0;
        Span<double> shares = stackalloc double[Bins];
        for (int b = 0; b < Bins; b++)
            sum += shares[b] = _scale.BroadDensity(instrument, Lowest + (b + 0.5) * Width);
        for (int b = 0; b < Bins; b++)
            _joint[row + b] +=
                _list.Weights[broad]
                * (
                    (1 - _list.Changed) * like[b] / resembling
                    + _list.Changed * (NotListed.Healthy * healthy[b] + (1 - NotListed.Healthy) * shares[b] / sum)
                );
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

    // What is known of the groups with the outcomes of the test.
    private double Mutual()
    {
        Span<double> groups = _ofGroups.AsSpan(0, _groups * Used);
        groups.Clear();
        for (int f = 0; f < _list.Count; f++)
            for (int b = 0; b < Used; b++)
                groups[_groupOf[f] * Used + b] += _joint[f * Used + b];
        return Mutual(groups, Used);
    }

    private double Mutual(ReadOnlySpan<double> joint, int outcomes)
    {
        double[] outcome = new double[outcomes];
        for (int i = 0; i < joint.Length; i++)
            outcome[i % outcomes] += joint[i];
        double bits = 0;
        for (int g = 0; g < joint.Length; g += outcomes)
        {
            double group = 0;
            for (int o = 0; o < outcomes; o++)
                group += joint[g + o];
            for (int o = 0; o < outcomes; o++)
                if (joint[g + o] is > 0 and var here)
                    bits += here * Math.Log2(here / (group * outcome[o]));
        }

        return bits;
    }
}
