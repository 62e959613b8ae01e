using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Lists;

/// <summary>The lists that fuzzing starts from, and those it found: the samples of these tests, and what once went
/// wrong.</summary>
public class CorpusTests
{
    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(Corpus, "*.csv").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    private static string Corpus => Path.Combine(CliProcess.Root, "Lighting.Calc.Tests", "Lists", "Corpus");

    [Fact]
    public void The_corpus_holds_the_samples()
    {
        foreach ((string name, string text) in ListSamples.Texts())
            Assert.Equal(text, File.ReadAllText(Path.Combine(Corpus, $"sample-{name}")));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_list_of_the_corpus_gives_a_bike_or_faults_with_their_place(string file)
    {
        string name = file.Split('-')[^1];
        ListSource source = ListSamples
            .Texts()
            .Where(t => t.Name != name)
            .Aggregate(
                ListSource.Empty.With(name, File.ReadAllBytes(Path.Combine(Corpus, file))),
                (s, t) => s.With(t.Name, t.Text)
            );
        ListResult<BikeLists> result = BikeLists.Read(source);
        if (result.TryGetValue(out BikeLists? lists))
            SameLists.Assert(
                lists,
                BikeLists
                    .Read(
                        BikeListsWriter
                            .Write(lists)
                            .Aggregate(ListSource.Empty, (s, list) => s.With(list.Key, list.Value))
                    )
                    .Value
            );
        Assert.All(result.Faults, f => Assert.True(f.Line >= 1 || f.ColumnName is null && f.Text is null, f.Message));
    }

    // The most rows a list may have, each with eight faults; most of the memory is free again at once.
    [Fact]
    public void The_longest_list_of_nothing_but_faults_is_read_with_less_than_200_MB_in_all()
    {
        string list = string.Concat(Enumerable.Repeat(ListSamples.SwapsCsv.Split('\n')[0] + "\n", 9_990));
        ListSource source = ListSamples.Of(("lamps.csv", ListSamples.LampsCsv), ("swaps.csv", list));
        Assert.True(FaultsWithin200Megabytes(source) > 50_000);
    }

    // The most rows, and not one cell of them right.
    [Fact]
    [Trait("time", "long")]
    public void The_longest_list_without_a_right_cell_is_read_with_less_than_200_MB_in_all()
    {
        string header = ListSamples.LampsCsv.Split('\n')[0];
        int cells = header.Split(',').Length;
        string rows = string.Concat(
            Enumerable
                .Range(0, ListLimits.Rows)
                .Select(i => string.Join(',', Enumerable.Repeat($"x?{i}", cells)) + "\n")
        );
        ListSource source = ListSamples.Of(("lamps.csv", header + "\n" + rows));
        Assert.True(FaultsWithin200Megabytes(source) > 7 * ListLimits.Rows);
    }

    private static int FaultsWithin200Megabytes(ListSource source)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        ListResult<BikeLists> result = BikeLists.Read(source);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200_000_000);
        return result.Faults.Length;
    }
}
