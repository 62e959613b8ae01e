using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Lighting.Calc.Benchmarks;

/// <summary>One reading of lists that may be anything, and what must never come of it.</summary>
/// <param name="Kind">The answer without texts and places, to tell new kinds of answers from known ones.</param>
/// <param name="Accepted">Whether there was no fault.</param>
/// <param name="Took">Time to read.</param>
/// <param name="Bytes">Memory allocated while reading.</param>
/// <param name="Wrong">A crash, more than a second or 200 MB, a refusal without its place, a list that does not come
/// back the same; as it should be, nothing.</param>
internal sealed partial record ListTrial(
    string Kind,
    bool Accepted,
    TimeSpan Took,
    long Bytes,
    IReadOnlyList<string> Wrong
)
{
    private const long MostBytes = 200_000_000;
    private static readonly TimeSpan s_longest = TimeSpan.FromSeconds(1);

    public static ListTrial Of(ListSource source)
    {
        long allocated = GC.GetAllocatedBytesForCurrentThread(),
            started = Stopwatch.GetTimestamp();
        try
        {
            ListResult<BikeLists> result = BikeLists.Read(source);
            long bytes = GC.GetAllocatedBytesForCurrentThread() - allocated;
            TimeSpan took = Stopwatch.GetElapsedTime(started);
            if (took > s_longest) // the machine may have done something else: the fastest of five counts
                took = Enumerable.Range(0, 4).Select(_ => TimeOf(source)).Append(took).Min();
            var wrong = new List<string>();
            if (took > s_longest)
                wrong.Add($"took {took.TotalSeconds} s");
            if (bytes > MostBytes)
                wrong.Add($"took {bytes} bytes");
            wrong.AddRange(
                result.Faults.Concat(result.Cautions).Where(f => !HasPlace(f)).Select(f => $"no place: {f.Message}")
            );
            if (result.TryGetValue(out BikeLists? lists))
                wrong.AddRange(NotTheSameAgain(lists));
            else if (result.Faults.IsEmpty)
                wrong.Add("refused without a fault");
            string kind = string.Join(
                '\n',
                result
                    .Faults.Concat(result.Cautions)
                    .Select(f => $"{f.File} {f.ColumnName} {Places().Replace(f.Problem, "#")}")
                    .Distinct()
                    .Order(StringComparer.Ordinal)
            );
            return new ListTrial(kind, result.Succeeded, took, bytes, wrong);
        }
        catch (Exception e)
        {
            return new ListTrial(e.GetType().Name, Accepted: false, TimeSpan.Zero, Bytes: 0, [e.ToString()]);
        }
    }

    private static TimeSpan TimeOf(ListSource source)
    {
        long started = Stopwatch.GetTimestamp();
        BikeLists.Read(source);
        return Stopwatch.GetElapsedTime(started);
    }

    // What was read is written and read again: it must say the same.
    private static IEnumerable<string> NotTheSameAgain(BikeLists lists)
    {
        IReadOnlyDictionary<string, string> written = BikeListsWriter.Write(lists);
        ListResult<BikeLists> again = BikeLists.Read(
            written.Aggregate(ListSource.Empty, (s, l) => s.With(l.Key, l.Value))
        );
        if (!again.TryGetValue(out BikeLists? same))
            yield return $"written, it is refused: {again.Faults[0].Message}";
        else if (!BikeListsWriter.Write(same).OrderBy(l => l.Key).SequenceEqual(written.OrderBy(l => l.Key)))
            yield return "written twice, it differs";
    }

    private static bool HasPlace(ListFault fault) =>
        fault.Line >= 1
            ? fault.Message.StartsWith(
                string.Create(CultureInfo.InvariantCulture, $"{fault.File}:{fault.Line}: "),
                StringComparison.Ordinal
            ) && !fault.Message.AsSpan().ContainsAny('\n', '\r', '\0')
            : fault.Line == 0
                && IsOfTheFile(fault)
                && fault.Message.StartsWith($"{fault.File}: ", StringComparison.Ordinal);

    // Without a line only what no line is to blame for.
    private static bool IsOfTheFile(ListFault fault) => fault.ColumnName is null && fault.Text is null;

    [GeneratedRegex(@"'[^']*'|\d+")]
    private static partial Regex Places();
}
