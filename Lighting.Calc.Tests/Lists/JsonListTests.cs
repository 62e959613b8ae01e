using System.IO.Compression;
using System.Text;
using System.Text.Json;
using FsCheck.Xunit;

namespace Lighting.Calc.Tests.Lists;

/// <summary>A bike's lists as one JSON object, and as one zip archive.</summary>
public class JsonListTests
{
    [Fact]
    public void The_whole_bike_reads_back_the_same() => ReadsBack(BikeLists.Read(ListSamples.Whole).Value);

    [Property(MaxTest = 200)]
    public void A_random_bike_reads_back_the_same(int seed) => ReadsBack(new RandomLists(seed).Make());

    [Fact]
    public void Lists_are_serialised_and_deserialised_as_they_are_read()
    {
        BikeLists lists = BikeLists.Read(ListSamples.Whole).Value;
        string json = JsonSerializer.Serialize(lists);
        SameLists.Assert(lists, JsonSerializer.Deserialize<BikeLists>(json)!);
        JsonException wrong = Assert.Throws<JsonException>(() =>
            JsonSerializer.Deserialize<BikeLists>("""{"lamps": []}""")
        );
        Assert.Contains("the list has no lamps", wrong.Message, StringComparison.Ordinal);
        Assert.Single(Assert.IsType<ListException>(wrong.InnerException).Faults);
    }

    [Fact]
    public void A_bike_alone_is_neither_serialised_nor_deserialised_and_the_message_names_the_call()
    {
        Bike bike = BikeLists.Read(ListSamples.Whole).Value.Bike;
        Assert.Contains(
            "BikeListsWriter.WriteJson",
            Assert.Throws<NotSupportedException>(() => JsonSerializer.Serialize(bike)).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "ListSource.FromJson",
            Assert.Throws<NotSupportedException>(() => JsonSerializer.Deserialize<Bike>("{}")).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(
        """{"lamps": [{"circuit": "rear", "lamp": "tail", "volts": 12, "watts": "55,0"}]}""",
        "lamps row 1: column 'watts': '55,0' is not a number of watts; write a decimal point: 55.0"
    )]
    [InlineData(
        """{"lamps": [{"circuit": "rear", "lamp": "tail", "code": "P21W"}, {"lamp": "stop", "code": "P21W"}]}""",
        "lamps row 2: column 'circuit': the cell is blank"
    )]
    [InlineData(
        """{"lamps": [{"circuit": "a", "lamp": "tail", "code": "R5W"}, {"circuit": "a", "lamp": "Tail"}]}""",
        "lamps row 2: column 'lamp': 'Tail' is the name of the lamp on row 1 already; give each its own name"
    )]
    [InlineData(
        """{"lamps": [{"circuit": "rear", "lamp": "tail", "code": "P21W", "duty": [1]}]}""",
        "lamps row 1: column 'duty': the value is an array, not a text or a number"
    )]
    [InlineData(
        """{"lamps": [{"circuit": "rear", "lamp": "tail", "code": "P21W", "Code": "R5W"}]}""",
        "lamps row 1: 'Code' is given twice; keep one of the two"
    )]
    [InlineData("""{"lamps": ["tail"]}""", "lamps row 1: is a text; expected an object with a value for each column")]
    [InlineData(
        """{"lamps": {"lamp": "tail"}}""",
        "lamps: is an object; expected an array with an object for each row"
    )]
    [InlineData("""{"lamps": []}""", "lamps: the list has no lamps; give each lamp a row below the header")]
    [InlineData("{}", "lamps: the list is missing; a bike needs at least its lamps")]
    [InlineData("""{"lamps": [], "lamps": []}""", "lamps: is given twice; keep one of the two")]
    [InlineData(
        "[1]",
        "JSON: is not an object; the lists are bike, lamps, runs, switches, fuses, relays, charging, ride, "
            + "swaps, readings or prices"
    )]
    [InlineData(
        "{\n\"lamps\": [,]}",
        "JSON:2: is not JSON from byte 11 of this line on; expected an object with the lists of a bike, such as "
            + "{\"lamps\": [{\"lamp\": \"tail\", …}]}"
    )]
    public void What_is_wrong_names_list_row_and_column(string json, string message) =>
        Assert.Contains(message, BikeLists.Read(ListSource.FromJson(json)).Faults.Select(f => f.Message));

    [Fact]
    public void Items_of_the_bike_are_named_as_its_columns()
    {
        string[] faults = ListSamples.Faults(
            ListSource.FromJson(
                """{"bike": {"wire temperature": 300, "earh": "+"}, "lamps": [{"circuit": "a", "lamp": "b"}]}"""
            )
        );
        Assert.Equal(
            [
                "bike: column 'earh': 'earh' is not an item of this list",
                "bike: column 'wire temperature': '300' is out of range; expected -60 °C to 250 °C",
            ],
            faults.Take(2).Select(f => f.Split("; the items")[0]).Select(f => f.Split("; did you")[0])
        );
    }

    [Fact]
    public void A_list_or_column_that_there_is_not_is_a_fault_with_the_nearest_name()
    {
        ListFault[] faults =
        [
            .. BikeLists
                .Read(ListSource.FromJson("""{"lamp": [], "lamps": [{"circuit": "a", "lamp": "b", "wats": 5}]}"""))
                .Faults,
        ];
        Assert.Equal(["lamp", "wats"], faults.Select(f => f.Text!).Order(StringComparer.Ordinal));
        Assert.Contains(faults, f => f is { File: "lamps", Row: 1, Nearest: ["watts"] });
        Assert.Contains(faults, f => f is { File: "JSON", Nearest: ["lamps"] });
    }

    [Fact]
    public void Numbers_truth_values_and_null_are_cells()
    {
        BikeLists lists = BikeLists
            .Read(
                ListSource.FromJson(
                    """
                    {"$schema": "x", "lamps": [{"circuit": "horn", "lamp": "horn", "volts": 12.0, "watts": 3e1,
                    "quantity": 2, "momentary": true, "lit when": null}]}
                    """
                )
            )
            .Value;
        FittedLamp lamp = lists.Bike.Lamps[0];
        Assert.Equal(
            (30, 2, true),
            ((double)lamp.Specification.ReferencePower.Watts, lamp.Quantity, lamp.Momentary!.Value)
        );
        Assert.Same(Condition.Always, lamp.LitWhen);
    }

    [Fact]
    public async Task Streams_are_read_asynchronously_whatever_they_hold()
    {
        BikeLists lists = BikeLists.Read(ListSamples.Whole).Value;
        SameLists.Assert(
            lists,
            BikeLists
                .Read(
                    await ListSource.FromJsonAsync(
                        Streamed(BikeListsWriter.WriteJson(lists)),
                        TestContext.Current.CancellationToken
                    )
                )
                .Value
        );
        SameLists.Assert(
            lists,
            BikeLists
                .Read(
                    await ListSource.FromStreamAsync(
                        Streamed(BikeListsWriter.WriteJson(lists)),
                        TestContext.Current.CancellationToken
                    )
                )
                .Value
        );
        SameLists.Assert(
            lists,
            BikeLists
                .Read(await ListSource.FromStreamAsync(Zipped("twin/"), TestContext.Current.CancellationToken))
                .Value
        );
        SameLists.Assert(
            BikeLists.Read(ListSource.Empty.With("lamps.csv", ListSamples.LampsCsv)).Value,
            BikeLists
                .Read(
                    await ListSource.FromStreamAsync(
                        Streamed(ListSamples.LampsCsv),
                        TestContext.Current.CancellationToken
                    )
                )
                .Value
        );
        ListSource source = ListSource.Empty;
        foreach ((string name, string text) in ListSamples.Texts())
            source = await source.WithAsync(name, Streamed(text), TestContext.Current.CancellationToken);
        SameLists.Assert(lists, BikeLists.Read(source).Value);
    }

    [Fact]
    public async Task A_zip_that_is_none_or_holds_two_bikes_is_a_fault()
    {
        Assert.Equal(
            "ZIP: is not a zip archive that can be read; zip the lists again, without a password",
            await Fault(new MemoryStream([.. "PK\u0003\u0004 and no more"u8]))
        );
        Assert.Equal("ZIP: holds lists in several folders; zip the lists of one bike", await Fault(Zipped("a/", "b/")));
        Assert.Equal("lamps.csv: is given twice; keep one of the two", await Fault(Zipped("", "")));

        static async Task<string> Fault(Stream stream) =>
            BikeLists
                .Read(await ListSource.FromStreamAsync(stream, TestContext.Current.CancellationToken))
                .Faults.Where(f => !f.Message.StartsWith("bike.csv", StringComparison.Ordinal))
                .First()
                .Message;
    }

    [Fact]
    public void Two_lists_of_one_name_are_a_fault_and_not_an_exception() =>
        Assert.Equal(
            ["LAMPS.csv: and 'lamps.csv' are the same list; keep one of the two"],
            ListSamples.Faults(ListSamples.Whole.With("LAMPS.csv", ""))
        );

    [Fact]
    public void A_bike_is_read_from_a_file_of_JSON_or_an_archive()
    {
        using var folder = new Cli.TemporaryFolder();
        BikeLists lists = BikeLists.Read(ListSamples.Whole).Value;
        string json = Path.Combine(folder.Path, "twin.json"),
            zip = Path.Combine(folder.Path, "twin.ZIP");
        File.WriteAllText(json, BikeListsWriter.WriteJson(lists));
        File.WriteAllBytes(zip, Zipped("").ToArray());
        SameLists.Assert(lists, BikeLists.Read(json).Value);
        SameLists.Assert(lists, BikeLists.Read(zip).Value);
        File.WriteAllText(json, "{");
        Assert.StartsWith("twin.json:1: is not JSON", BikeLists.Read(json).Faults[0].Message, StringComparison.Ordinal);
    }

    private static void ReadsBack(BikeLists lists) =>
        SameLists.Assert(lists, BikeLists.Read(ListSource.FromJson(BikeListsWriter.WriteJson(lists))).Value);

    private static MemoryStream Streamed(string text) => new(Encoding.UTF8.GetBytes(text));

    private static MemoryStream Zipped(params string[] folders)
    {
        var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
            foreach (string folder in folders)
                foreach ((string name, string text) in ListSamples.Texts())
                {
                    using Stream entry = archive.CreateEntry(folder + name).Open();
                    entry.Write(Encoding.UTF8.GetBytes(text));
                }

        stream.Position = 0;
        return stream;
    }
}
