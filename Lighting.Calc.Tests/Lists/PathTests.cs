namespace Lighting.Calc.Tests.Lists;

/// <summary>Reading from folders and files of a scratch folder.</summary>
public sealed class PathTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("lists-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_folder_gives_the_same_bike_as_memory()
    {
        foreach ((string name, string text) in ListSamples.Texts())
            File.WriteAllText(Path.Combine(_folder, name), text);
        File.WriteAllText(Path.Combine(_folder, "notes.txt"), "not a list");
        ListResult<BikeLists> result = BikeLists.Read(_folder);
        Assert.Empty(result.Faults);
        Assert.Empty(result.Cautions);
        SameLists.Assert(BikeLists.Read(ListSamples.Whole).Value, result.Value);
    }

    [Fact]
    public void A_list_may_be_named_in_capitals()
    {
        Write("LAMPS.CSV", "circuit,lamp,volts,watts\nrear,tail,12,0\n");
        Assert.Equal(
            ["LAMPS.CSV:2: column 'watts' (4): '0' is out of range; expected 0.001 W to 2000 W"],
            Faults(_folder)
        );
    }

    [Fact]
    public void Two_files_of_one_list_are_refused()
    {
        Write("LAMPS.csv", "circuit,lamp,volts,watts\nrear,tail,12,5\n");
        Write("lamps.csv", "circuit,lamp,volts,watts\nrear,tail,12,5\n");
        Assert.Equal(["lamps.csv: and 'LAMPS.csv' are the same list; keep one of the two"], Faults(_folder));
    }

    [Fact]
    public void A_single_file_is_a_list_of_lamps_under_its_own_name()
    {
        Assert.Single(
            BikeLists.Read(Write("pinmoor.csv", "circuit,lamp,volts,watts\nrear,tail,12,5\n")).Value.Bike.Lamps
        );
        Assert.Equal(
            ["bad.csv:2: column 'watts' (4): '0' is out of range; expected 0.001 W to 2000 W"],
            Faults(Write("bad.csv", "circuit,lamp,volts,watts\nrear,tail,12,0\n"))
        );
    }

    [Fact]
    public void A_single_file_of_another_list_is_refused() =>
        Assert.Equal(
            ["runs.csv: is one list of a bike, not a lamps.csv; give its folder"],
            Faults(Write("runs.csv", ListSamples.RunsCsv))
        );

    [Fact]
    public void A_missing_path_is_a_fault() =>
        Assert.Equal(["'no/such/bike': there is no such file or folder"], Faults("no/such/bike"));

    [Fact]
    public void An_empty_folder_lacks_its_lamps() =>
        Assert.Equal(["lamps.csv: the list is missing; a bike needs at least its lamps"], Faults(_folder));

    [Fact]
    public void A_file_of_100_MB_is_refused_without_reading_it_into_memory()
    {
        string path = Path.Combine(_folder, "lamps.csv");
        using (FileStream stream = File.Create(path))
            stream.SetLength(100_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Equal(["lamps.csv: is larger than 4 MiB, the limit of a list"], Faults(path));
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 40_000_000);
    }

    [Fact]
    public void Swaps_and_readings_may_come_from_files_of_their_own()
    {
        BikeLists lists = BikeLists.Read(ListSamples.Of([.. ListSamples.Texts()[..7]])).Value;
        Assert.Empty(lists.Swaps);
        Assert.Equal(2, lists.WithSwaps(Write("to led.csv", ListSamples.SwapsCsv)).Value.Swaps.Length);
        Assert.Equal(7, lists.WithReadings(Write("monday.csv", ListSamples.ReadingsCsv)).Value.Readings.Length);
        Assert.Equal(["'no.csv': there is no such file"], lists.WithSwaps("no.csv").Faults.Select(f => f.Message));
        Assert.Equal(
            ["x.csv:2: column 'lamp' (1): 'top' is not a lamp of the bike; did you mean 'stop'?"],
            lists.WithSwaps(Write("x.csv", "lamp,new code\ntop,P21W\n")).Faults.Select(f => f.Message)
        );
        Assert.Equal(
            [
                "y.csv:2: column 'when' (1): 'lit' is not a switch of the bike; the switches are lights, brake",
                "y.csv:2: column 'point' (2): 'dip fed' is not a point of the bike; did you mean 'dip feed'?",
            ],
            lists
                .WithReadings(Write("y.csv", "when,point,instrument,reading\nlit=low,dip fed,meter,9\n"))
                .Faults.Select(f => f.Message)
        );
        Assert.Equal(
            ["readings.csv: the list is missing"],
            lists.WithReadings(ListSource.Empty).Faults.Select(f => f.Message)
        );
    }

    [Fact]
    public void An_empty_path_is_misuse() => Assert.Throws<ArgumentException>(() => BikeLists.Read(""));

    private string Write(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private static string[] Faults(string path) => [.. BikeLists.Read(path).Faults.Select(f => f.Message)];
}
