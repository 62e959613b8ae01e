using System.Runtime.ExceptionServices;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Draws and answers all samples on several threads.</summary>
/// <remarks>
/// The samples are cut into a fixed number of blocks; a sample's values depend on seed and number alone, each block is summed
/// in the order of its samples and the blocks in theirs. Threads only decide who works on which block.
/// </remarks>
internal sealed class SampleRun
{
    private const int Blocks = 64;
    private const long MostNumbers = 200_000_000;

    private readonly SamplingPlan _plan;
    private readonly ToleranceOptions _options;
    private readonly double[] _usable;
    private readonly QuantityPlaces _places;
    private readonly QuantileTable[] _tables;
    private readonly double[] _listedValues;
    private readonly SampleSums[] _blocks = new SampleSums[Blocks];
    private int _done;

    public SampleRun(SamplingPlan plan, ToleranceOptions options, double[] usableAmperes)
    {
        _plan = plan;
        _options = options;
        _usable = usableAmperes;
        _places = new QuantityPlaces(plan);
        if ((long)options.Samples * _places.Quantities > MostNumbers || (long)Blocks * _places.Quantities * plan.Uncertain.Parts.Length > MostNumbers)
            throw new ArgumentException($"{options.Samples} samples of {_places.Quantities} results are more than are kept; take fewer samples.", nameof(options));
        var known = new Dictionary<PartSpread, QuantileTable>();
        _tables = [.. plan.Uncertain.Parts.Select(p => known.TryGetValue(p.Spread, out QuantileTable? table) ? table : known[p.Spread] = new QuantileTable(p.Spread))];
        _listedValues = plan.Uncertain.Listed();
        Listed = new double[_places.Quantities];
        ListedVerdicts = new bool[_places.Verdicts];
        new Sampler(plan, usableAmperes).Answer(_listedValues, Listed, ListedVerdicts);
        Results = [.. Enumerable.Range(0, _places.Quantities).Select(_ => new double[options.Samples])];
        Sums = NewSums();
    }

    /// <summary>Results of the listed bike.</summary>
    public double[] Listed { get; }

    public bool[] ListedVerdicts { get; }

    /// <summary>By quantity, then by sample.</summary>
    public double[][] Results { get; }

    public SampleSums Sums { get; }

    /// <summary>The values of a sample.</summary>
    public void Draw(int sample, double[] values)
    {
        var stream = new SampleStream(_options.Seed, sample);
        for (int p = 0; p < values.Length; p++)
            values[p] = _tables[p].At(stream.Uniform(p));
    }

    public void Run(IProgress<Ratio>? progress, CancellationToken cancel)
    {
        var threads = new ParallelOptions { MaxDegreeOfParallelism = _options.Threads ?? -1, CancellationToken = cancel };
        try
        {
            Parallel.For(0, Blocks, threads, () => new Sampler(_plan, _usable), (block, _, sampler) => RunBlock(block, sampler, progress, cancel), _ => { });
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        foreach (SampleSums block in _blocks)
            Sums.Add(block);
    }

    private SampleSums NewSums() => new(_plan.Uncertain.Parts.Length, _places.Quantities, _places.Verdicts);

    private Sampler RunBlock(int block, Sampler sampler, IProgress<Ratio>? progress, CancellationToken cancel)
    {
        SampleSums sums = NewSums();
        int parts = _listedValues.Length, quantities = _places.Quantities;
        var values = new double[parts];
        var results = new double[quantities];
        var verdicts = new bool[_places.Verdicts];
        var partDeviations = new double[parts * SampleSums.Chunk];
        var quantityDeviations = new double[quantities * SampleSums.Chunk];
        int first = (int)((long)_options.Samples * block / Blocks), end = (int)((long)_options.Samples * (block + 1) / Blocks);
        for (int start = first; start < end; start += SampleSums.Chunk)
        {
            cancel.ThrowIfCancellationRequested();
            int count = Math.Min(SampleSums.Chunk, end - start);
            Array.Clear(partDeviations);
            Array.Clear(quantityDeviations);
            for (int i = 0; i < count; i++)
            {
                Draw(start + i, values);
                sampler.Answer(values, results, verdicts);
                for (int p = 0; p < parts; p++)
                    partDeviations[p * SampleSums.Chunk + i] = values[p] - _listedValues[p];
                for (int q = 0; q < quantities; q++)
                {
                    Results[q][start + i] = results[q];
                    quantityDeviations[q * SampleSums.Chunk + i] = results[q] - Listed[q];
                }

                for (int v = 0; v < verdicts.Length; v++)
                    sums.Good[v] += verdicts[v] ? 1 : 0;
            }

            sums.Add(partDeviations, quantityDeviations);
            progress?.Report(Ratio.FromDecimalFractions((double)Interlocked.Add(ref _done, count) / _options.Samples));
        }

        _blocks[block] = sums;
        return sampler;
    }
}
