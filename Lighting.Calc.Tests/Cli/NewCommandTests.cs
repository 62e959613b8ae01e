namespace Lighting.Calc.Tests.Cli;

/// <summary>A new bike from an empty folder: every choice can be checked at once, and what is there is kept.</summary>
public class NewCommandTests
{
    private static readonly string[] s_lists =
    [
        "bike.csv",
        "charging.csv",
        "fuses.csv",
        "lamps.csv",
        "runs.csv",
        "switches.csv",
    ];

    // Each choice once in the quick ones; all combinations in the long ones.
    public static IEnumerable<TheoryDataRow<string, string, string, string>> Choices =>
        from volts in new[] { "6", "12" }
        from supply in new[] { "battery", "coil" }
        from fuses in new[] { "one", "several" }
        from indicators in new[] { "no", "yes" }
        let isQuick =
            (volts, supply, fuses, indicators)
                is ("12", "battery", "several", "yes") or ("6", "coil", "one", "no")
        let row = new TheoryDataRow<string, string, string, string>(volts, supply, fuses, indicators)
        select isQuick ? row : row.WithTrait("time", "long");

    [Theory]
    [MemberData(nameof(Choices))]
    public async Task Every_choice_is_a_bike_that_check_accepts_and_finds_suitable(
        string volts,
        string supply,
        string fuses,
        string indicators
    )
    {
        using var folder = new TemporaryFolder();
        string bike = Path.Combine(folder.Path, "a new bike");
        string[] words = ["--volts", volts, "--supply", supply, "--fuses", fuses, "--indicators", indicators];
        CliResult made = await InProcess.Run(["new", bike, .. words]);
        Assert.Equal((0, ""), (made.ExitCode, made.Errors));
        Assert.Contains($"lighting-calc check \"{bike}\"", made.Output, StringComparison.Ordinal);
        Assert.Equal(
            s_lists.Where(l => supply == "battery" || l != "fuses.csv"),
            Directory.GetFiles(bike).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)
        );
        Assert.Equal(supply == "coil", made.Output.Contains("no fuse is listed", StringComparison.Ordinal));
        BikeLists lists = BikeLists.Read(bike).Value;
        Assert.Equal(volts == "6" ? 6 : 12, lists.Bike.SystemVoltage.Volts);
        Assert.Equal(supply == "coil" ? 0 : fuses == "one" ? 1 : 3, lists.Bike.Fuses.Length);
        Assert.Equal(indicators == "yes", lists.Bike.Lamps.Any(l => l.Circuit == "indicators"));
        Assert.Contains(lists.Bike.Lamps, l => l.Notes is not null);

        CliResult check = await InProcess.Run("check", bike);
        Assert.True(check.ExitCode is 0 or 1, check.Errors);
        Assert.Empty(check.Errors);
        // Indicators of a lighting coil dim the other lamps, as they do on the road.
        if (supply == "battery")
            Assert.True(check.ExitCode == 0, check.Output);
        foreach (string command in new[] { "load", "drop", "wire", "charging", "readings", "diagram" })
        {
            CliResult result = await InProcess.Run(command, bike);
            Assert.True(result.ExitCode is 0 or 1, $"{command}: {result.Errors}");
        }
    }

    [Fact]
    public async Task Without_a_person_to_ask_the_first_choices_are_taken()
    {
        using var folder = new TemporaryFolder();
        string plain = Path.Combine(folder.Path, "plain"),
            stated = Path.Combine(folder.Path, "stated");
        string[] words = ["--volts", "12", "--supply", "battery", "--fuses", "one", "--indicators", "no"];
        Assert.Equal(0, (await InProcess.Run("new", plain)).ExitCode);
        Assert.Equal(0, (await InProcess.Run(["new", stated, .. words])).ExitCode);
        foreach (string list in s_lists)
            Assert.Equal(File.ReadAllText(Path.Combine(stated, list)), File.ReadAllText(Path.Combine(plain, list)));
    }

    // 6 V by its word, a wrong word and then coil by its first letter, indicators by the empty answer.
    [Fact]
    public async Task A_person_at_a_terminal_is_asked_what_no_option_says()
    {
        using var folder = new TemporaryFolder();
        CliResult made = await InProcess.Answering("6\nmagneto\nc\n\n", "new", folder.Path);
        Assert.Equal((0, ""), (made.ExitCode, made.Errors));
        Assert.StartsWith("System voltage, 12 or 6? [12] Supply of the lamps,", made.Output, StringComparison.Ordinal);
        Bike bike = BikeLists.Read(folder.Path).Value.Bike;
        Assert.Equal((6, LightingSupply.Direct), (bike.SystemVoltage.Volts, bike.Lighting));
        Assert.DoesNotContain(bike.Lamps, l => l.Circuit == "indicators");
    }

    [Fact]
    public async Task The_end_of_the_answers_leaves_the_rest_as_it_is()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await InProcess.Answering("", "new", folder.Path)).ExitCode);
        Assert.Equal(12, BikeLists.Read(folder.Path).Value.Bike.SystemVoltage.Volts);
    }

    [Fact]
    public async Task A_list_that_is_there_is_never_replaced_and_nothing_is_written()
    {
        using var folder = new TemporaryFolder();
        string own = folder.Write("Lamps.CSV", "my own");
        CliResult refused = await InProcess.Run("new", folder.Path);
        Assert.Equal((2, ""), (refused.ExitCode, refused.Output));
        Assert.Equal(
            $"lighting-calc: '{folder.Path}' has lists already: Lamps.CSV; name another folder.\n",
            refused.Errors
        );
        Assert.Equal("my own", File.ReadAllText(own));
        Assert.Single(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task Other_files_of_a_folder_are_left_alone()
    {
        using var folder = new TemporaryFolder();
        string photo = folder.Write("photo.txt", "a photo");
        Assert.Equal(0, (await InProcess.Run("new", folder.Path)).ExitCode);
        Assert.Equal("a photo", File.ReadAllText(photo));
        Assert.Equal(1 + s_lists.Length, Directory.GetFiles(folder.Path).Length);
    }

    [Fact]
    public async Task A_file_is_no_folder()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("bike", "");
        CliResult refused = await InProcess.Run("new", file);
        Assert.Equal((2, $"lighting-calc: '{file}' is a file; name a folder.\n"), (refused.ExitCode, refused.Errors));
    }

    // A folder stands where a list is to go: what was written before it is taken back.
    [Fact]
    public async Task A_list_that_cannot_be_written_leaves_none()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "switches.csv"));
        CliResult refused = await InProcess.Run("new", folder.Path);
        Assert.Equal(2, refused.ExitCode);
        Assert.StartsWith(
            $"lighting-calc: '{folder.Path}' cannot be written:",
            refused.Errors,
            StringComparison.Ordinal
        );
        Assert.Single(Directory.GetFileSystemEntries(folder.Path));
    }
}
