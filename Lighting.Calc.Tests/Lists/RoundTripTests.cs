using System.Text;
using FsCheck.Xunit;

namespace Lighting.Calc.Tests.Lists;

/// <summary>What is written reads back the same, in every accepted form of the file.</summary>
public class RoundTripTests
{
    [Fact]
    public void The_whole_bike_reads_back_the_same() => ReadsBack(BikeLists.Read(ListSamples.Whole).Value);

    [Property(MaxTest = 300)]
    public void A_random_bike_reads_back_the_same(int seed) => ReadsBack(new RandomLists(seed).Make());

    [Property(MaxTest = 100)]
    public void Separator_quotes_mark_and_line_ends_do_not_matter(
        int seed,
        bool mark,
        bool carriageReturn,
        bool quoteAll,
        byte which
    )
    {
        BikeLists lists = new RandomLists(seed).Make();
        char separator = ",;\t"[which % 3];
        ListSource source = ListSource.Empty;
        foreach ((string name, string text) in BikeListsWriter.Write(lists))
        {
            string other = CsvForm.Rewrite(text, separator, carriageReturn ? "\r\n" : "\n", quoteAll);
            source = source.With(name, [.. mark ? Encoding.UTF8.Preamble : [], .. Encoding.UTF8.GetBytes(other)]);
        }

        SameLists.Assert(lists, BikeLists.Read(source).Value);
    }

    [Fact]
    public void Text_bytes_streams_and_readers_are_one_way_in()
    {
        byte[] bytes = Encoding.UTF8.GetBytes(ListSamples.LampsCsv);
        using var stream = new MemoryStream(bytes);
        using var reader = new StringReader(ListSamples.LampsCsv);
        BikeLists expected = BikeLists.Read(ListSource.Empty.With("lamps.csv", ListSamples.LampsCsv)).Value;
        SameLists.Assert(expected, BikeLists.Read(ListSource.Empty.With("lamps.csv", bytes)).Value);
        SameLists.Assert(expected, BikeLists.Read(ListSource.Empty.With("lamps.csv", stream)).Value);
        SameLists.Assert(expected, BikeLists.Read(ListSource.Empty.With("lamps.csv", reader)).Value);
        Assert.True(stream.CanRead);
    }

    [Fact]
    public void A_name_like_a_formula_is_written_so_that_no_spreadsheet_runs_it()
    {
        BikeLists lists = BikeLists
            .Read(ListSamples.Of(("lamps.csv", "circuit,lamp,volts,watts\n=1+1,@tail,12,5\n")))
            .Value;
        string text = BikeListsWriter.Write(lists)["lamps.csv"];
        Assert.Equal(
            "circuit,lamp,code,type,quantity,volts,watts,amps,minimum volts,lit when,duty,feed,return,allowed "
                + "drop,momentary\n'=1+1,'@tail,,filament,1,12,,0.4166666666666667,,,,,,,\n",
            text
        );
        Assert.Equal(
            ("=1+1", "@tail"),
            (ListSamples.LampsOnly(text).Lamps[0].Circuit, ListSamples.LampsOnly(text).Lamps[0].Lamp)
        );
    }

    [Fact]
    public void A_lamp_with_a_code_is_written_by_its_code() =>
        Assert.Contains(
            "rear,stop,P21W,,1,,,,,brake=on,0.2,stop feed,frame,,\n",
            BikeListsWriter.Write(BikeLists.Read(ListSamples.Whole).Value)["lamps.csv"],
            StringComparison.Ordinal
        );

    private static void ReadsBack(BikeLists lists)
    {
        ListSource source = BikeListsWriter
            .Write(lists)
            .Aggregate(ListSource.Empty, (s, list) => s.With(list.Key, list.Value));
        SameLists.Assert(lists, BikeLists.Read(source).Value);
    }
}
