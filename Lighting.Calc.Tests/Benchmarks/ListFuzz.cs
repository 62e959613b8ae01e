using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Lighting.Calc.Lists;

namespace Lighting.Calc.Benchmarks;

/// <summary>Reads mutated lists: none may crash the reader, keep it for a second, take 200 MB, or be refused without its place.</summary>
/// <remarks>
/// Seeds are the corpus of the tests. An input that gives a kind of answer not seen before (the faults without their texts and
/// places) joins the seeds of its run, so that later mutations start from there. Seed and count fix the inputs of each worker.
/// </remarks>
internal sealed partial class ListFuzz(string corpus)
{
    private const int MostKept = 4000;
    private const long MostBytes = 200_000_000;
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(1);

    private readonly (string Name, byte[] Text)[] _seeds =
        [.. Directory.GetFiles(corpus, "*.csv", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => (NameOf(f), File.ReadAllBytes(f)))];

    private readonly ConcurrentDictionary<string, byte> _kinds = new();
    private readonly ConcurrentBag<string> _found = [];
    private long _read, _accepted, _slowestTicks, _mostBytes;

    /// <summary>Reads so many mutated lists and says what was found; the number of findings.</summary>
    public int Run(long count, int seed, string findings)
    {
        int workers = Environment.ProcessorCount;
        var current = new Reading?[workers];
        var watch = Stopwatch.StartNew();
        using var ended = new CancellationTokenSource();
        Task hangs = Task.Run(() => WatchForHangs(current, findings, ended.Token));
        Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, worker => Work(worker, count / workers, seed, current, findings));
        ended.Cancel();
        hangs.Wait();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{_read} lists read in {watch.Elapsed.TotalSeconds:F0} s from {_seeds.Length} seeds: {_accepted} accepted, {_read - _accepted} refused, {_kinds.Count} kinds of answer; "
            + $"slowest {TimeSpan.FromTicks(_slowestTicks).TotalMilliseconds:F0} ms, most memory {_mostBytes / 1e6:F1} MB; {_found.Count} findings"));
        return _found.Count;
    }

    private void Work(int worker, long count, int seed, Reading?[] current, string findings)
    {
        var random = new Random(unchecked(seed * 397 + worker));
        var mutator = new ListMutator(random.Next());
        List<(string Name, byte[] Text)> known = [.. _seeds];
        for (long i = 0; i < count; i++)
        {
            // Half of them from what is right, so that a good share stays readable.
            (string name, byte[] text) = random.Next(2) == 0 ? _seeds[random.Next(_seeds.Length)] : known[random.Next(known.Count)];
            byte[] mutated = mutator.Mutate(text, known[random.Next(known.Count)].Text);
            ListSource source = Around(name, mutated, random.Next(4) > 0);
            Volatile.Write(ref current[worker], new Reading(Stopwatch.GetTimestamp(), name, mutated));
            string kind = Read(source, name, mutated, findings);
            current[worker] = null;
            if (_kinds.TryAdd(kind, 0) && known.Count < MostKept && mutated.Length < 8192)
                known.Add((name, mutated));
        }
    }

    // The other lists of the first seeds beside it, or alone with the lamps.
    private ListSource Around(string name, byte[] text, bool alone)
    {
        ListSource source = ListSource.Empty.With(name, text);
        var named = new HashSet<string> { name };
        foreach ((string other, byte[] list) in _seeds)
            if ((!alone || other == "lamps.csv") && named.Add(other))
                source = source.With(other, list);
        return source;
    }

    private string Read(ListSource source, string name, byte[] text, string findings)
    {
        long allocated = GC.GetAllocatedBytesForCurrentThread(), started = Stopwatch.GetTimestamp();
        try
        {
            ListResult<BikeLists> result = BikeLists.Read(source);
            long bytes = GC.GetAllocatedBytesForCurrentThread() - allocated;
            TimeSpan took = Stopwatch.GetElapsedTime(started);
            if (took > Longest) // the machine may have done something else: the fastest of five counts
                took = Enumerable.Range(0, 4).Select(_ => TimeOf(source)).Append(took).Min();
            if (Interlocked.Increment(ref _read) % 100_000 == 0)
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{_read} lists read"));
            Raise(ref _slowestTicks, took.Ticks);
            Raise(ref _mostBytes, bytes);
            if (took > Longest)
                Found(name, text, $"took {took.TotalSeconds} s", findings);
            if (bytes > MostBytes)
                Found(name, text, $"took {bytes} bytes", findings);
            foreach (ListFault fault in result.Faults.Concat(result.Cautions))
                if (!HasPlace(fault))
                    Found(name, text, $"no place: {fault.Message}", findings);
            if (result.TryGetValue(out BikeLists? lists))
            {
                Interlocked.Increment(ref _accepted);
                CheckWritten(lists, name, text, findings);
            }
            else if (result.Faults.IsEmpty)
            {
                Found(name, text, "refused without a fault", findings);
            }

            return string.Join('\n', result.Faults.Concat(result.Cautions).Select(f => $"{f.File} {f.ColumnName} {Places().Replace(f.Problem, "#")}").Distinct().Order(StringComparer.Ordinal));
        }
        catch (Exception e)
        {
            Found(name, text, e.ToString(), findings);
            return e.GetType().Name;
        }
    }

    private static TimeSpan TimeOf(ListSource source)
    {
        long started = Stopwatch.GetTimestamp();
        BikeLists.Read(source);
        return Stopwatch.GetElapsedTime(started);
    }

    // What was read is written and read again: it must say the same.
    private void CheckWritten(BikeLists lists, string name, byte[] text, string findings)
    {
        IReadOnlyDictionary<string, string> written = BikeListsWriter.Write(lists);
        ListResult<BikeLists> again = BikeLists.Read(written.Aggregate(ListSource.Empty, (s, l) => s.With(l.Key, l.Value)));
        if (!again.TryGetValue(out BikeLists? same))
            Found(name, text, $"written, it is refused: {again.Faults[0].Message}", findings);
        else if (!BikeListsWriter.Write(same).OrderBy(l => l.Key).SequenceEqual(written.OrderBy(l => l.Key)))
            Found(name, text, "written twice, it differs", findings);
    }

    private static bool HasPlace(ListFault fault) => fault.Line >= 1
        ? fault.Message.StartsWith(string.Create(CultureInfo.InvariantCulture, $"{fault.File}:{fault.Line}: "), StringComparison.Ordinal) && !fault.Message.AsSpan().ContainsAny('\n', '\r', '\0')
        : fault.Line == 0 && IsOfTheFile(fault) && fault.Message.StartsWith($"{fault.File}: ", StringComparison.Ordinal);

    // Without a line only what no line is to blame for.
    private static bool IsOfTheFile(ListFault fault) => fault.ColumnName is null && fault.Text is null;

    private static void Raise(ref long most, long value)
    {
        long seen;
        while (value > (seen = Interlocked.Read(ref most)) && Interlocked.CompareExchange(ref most, value, seen) != seen)
        {
        }
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

    // A corpus file is called after its list: twin-lamps.csv, or lamps.csv in a folder.
    private static string NameOf(string file) => Path.GetFileName(file).Split('-')[^1];

    private sealed record Reading(long Started, string Name, byte[] Text);

    [GeneratedRegex(@"'[^']*'|\d+")]
    private static partial Regex Places();
}
