namespace Lighting.Calc.Tests.Cli;

/// <summary>Slips that owners make, each answered with what to do.</summary>
public sealed class OwnersSlipTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_decimal_comma_between_commas_is_named()
    {
        Copy("valley-twin");
        string runs = File.ReadAllText(Path.Combine(_folder.Path, "runs.csv"));
        _folder.Write("runs.csv", runs.Replace("0.25 m", "0,25 m", StringComparison.Ordinal));
        CliResult result = await InProcess.Run("check", _folder.Path);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("if '0,25 m' is one number, write 0.25 m", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_spreadsheets_line_stands_over_a_list_of_one_column()
    {
        Copy("valley-twin");
        _folder.Write("relays.csv", "sep=;\nrelay\nhorn relay\n");
        CliResult result = await InProcess.Run("check", _folder.Path);
        Assert.DoesNotContain("not separated", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_list_of_switches_is_the_one_cause()
    {
        Copy("valley-twin");
        File.Delete(Path.Combine(_folder.Path, "switches.csv"));
        CliResult result = await InProcess.Run("check", _folder.Path);
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("No switches are listed", result.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Lamp dark", result.Output, StringComparison.Ordinal);
    }

    // A horn relay is named like a held switch.
    [Fact]
    public async Task A_relay_named_after_a_held_switch_is_read()
    {
        Copy("valley-twin");
        _folder.Write(
            "relays.csv",
            "relay,coil from,coil to,from,to\nhorn relay,stop feed,rear return,brake out,horn feed\n"
        );
        CliResult result = await InProcess.Run("check", _folder.Path);
        Assert.InRange(result.ExitCode, 0, 1);
    }

    [Fact]
    public async Task The_sheet_to_fill_in_may_go_where_it_belongs_and_replaces_none()
    {
        Copy("fell-lightweight");
        string sheet = Path.Combine(_folder.Path, "readings.csv");
        string[] words = ["readings", _folder.Path, "--format", "csv", "--out", sheet];
        Assert.Equal(0, (await InProcess.Run(words)).ExitCode);
        Assert.Equal(2, (await InProcess.Run(words)).ExitCode);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_status_of_wire_is_that_of_what_is_left(bool isWritten)
    {
        string[] lists = isWritten ? ["--lists", Path.Combine(_folder.Path, "sized")] : [];
        CliResult result = await InProcess.Run(["wire", CliProcess.Bike("valley-twin"), "--fuse", "5A", .. lists]);
        Assert.Contains("verload", result.Output, StringComparison.Ordinal);
        Assert.Equal(1, result.ExitCode);
    }

    private void Copy(string bike)
    {
        foreach (string list in Directory.GetFiles(CliProcess.Bike(bike)))
            File.Copy(list, Path.Combine(_folder.Path, Path.GetFileName(list)));
    }
}
