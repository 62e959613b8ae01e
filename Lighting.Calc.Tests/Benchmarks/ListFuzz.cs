using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace Lighting.Calc.Benchmarks;

/// <summary>Reads mutated lists: none may crash the reader, keep it for a second, take 200 MB, or be refused without
/// its place.</summary>
/// <remarks>
/// Seeds are the corpus of the tests. An input that gives a kind of answer not seen before (the faults without their
/// texts and places) joins the seeds of its run, so that later mutations start from there. Seed and count fix the
/// inputs of each worker.
/// </remarks>
internal sealed class ListFuzz(string corpus)
{
    private const int MostKept = 4000;

    private readonly ListCorpus _seeds = new(corpus);

    private readonly ConcurrentDictionary<string, byte> _kinds = new();
    private readonly ConcurrentBag<string> _found = [];
    private long _read,
        _accepted,
        _slowestTicks,
        _mostBytes;

    /// <summary>Reads so many mutated lists and says what was found; the number of findings.</summary>
    public int Run(long count, int seed, string findings)
    {
        int workers = Environment.ProcessorCount;
        var current = new Reading?[workers];
        var watch = Stopwatch.StartNew();
        using var ended = new CancellationTokenSource();
        Task hangs = Task.Run(() => WatchForHangs(current, findings, ended.Token));
        Parallel.For(
            0,
            workers,
            new ParallelOptions { MaxDegreeOfParallelism = workers },
            worker => Work(worker, count / workers, seed, current, findings)
        );
        ended.Cancel();
        hangs.Wait();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{_read} lists read in {watch.Elapsed.TotalSeconds:F0} s from {_seeds.Lists.Length} seeds: "
                    + $"{_accepted} accepted, {_read - _accepted} refused, {_kinds.Count} kinds of answer; "
                    + $"slowest {TimeSpan.FromTicks(_slowestTicks).TotalMilliseconds:F0} ms, most memory "
                    + $"{_mostBytes / 1e6:F1} MB; {_found.Count} findings"
            )
        );
        return _found.Count;
    }

    private void Work(int worker, long count, int seed, Reading?[] current, string findings)
    {
        var random = new Random(unchecked(seed * 397 + worker));
        var mutator = new ListMutator(random.Next());
        List<(string Name, byte[] Text)> known = [.. _seeds.Lists];
        for (long i = 0; i < count; i++)
        {
            // Half of them from what is right, so that a good share stays readable.
            (string name, byte[] text) =
                random.Next(2) == 0 ? _seeds.Lists[random.Next(_seeds.Lists.Length)] : known[random.Next(known.Count)];
            byte[] mutated = mutator.Mutate(text, known[random.Next(known.Count)].Text);
            ListSource source = _seeds.Around(name, mutated, random.Next(4) > 0);
            Volatile.Write(ref current[worker], new Reading(Stopwatch.GetTimestamp(), name, mutated));
            string kind = Read(source, name, mutated, findings);
            current[worker] = null;
            if (_kinds.TryAdd(kind, 0) && known.Count < MostKept && mutated.Length < 8192)
                known.Add((name, mutated));
        }
    }

    private string Read(ListSource source, string name, byte[] text, string findings)
    {
        ListTrial trial = ListTrial.Of(source);
        if (Interlocked.Increment(ref _read) % 100_000 == 0)
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{_read} lists read"));
        Raise(ref _slowestTicks, trial.Took.Ticks);
        Raise(ref _mostBytes, trial.Bytes);
        if (trial.Accepted)
            Interlocked.Increment(ref _accepted);
        foreach (string wrong in trial.Wrong)
            Found(name, text, wrong, findings);
        return trial.Kind;
    }

    private static void Raise(ref long most, long value)
    {
        long seen;
        while (
            value > (seen = Interlocked.Read(ref most)) && Interlocked.CompareExchange(ref most, value, seen) != seen
        ) { }
    }

    private void WatchForHangs(Reading?[] current, string findings, CancellationToken ended)
    {
        while (!ended.WaitHandle.WaitOne(TimeSpan.FromSeconds(5)))
            foreach (Reading reading in current.OfType<Reading>())
                if (Stopwatch.GetElapsedTime(reading.Started) > TimeSpan.FromSeconds(60))
                    Found(reading.Name, reading.Text, "hangs", findings);
    }

    private void Found(string name, byte[] text, string what, string findings)
    {
        _found.Add(what);
        if (_found.Count > 50)
            return;
        Directory.CreateDirectory(findings);
        string file = Path.Combine(findings, $"{_found.Count}-{name}");
        File.WriteAllBytes(file, text);
        Console.Error.WriteLine($"{file}: {what}");
    }

    private sealed record Reading(long Started, string Name, byte[] Text);
}
