namespace Lighting.Calc.Tests.Cli;

/// <summary>Bikes in folders whose names a shell, a locale or a careless program would trip over.</summary>
public class HardNameTests
{
    private const string Lamps = "circuit,lamp,code\nstop,stop lamp,P21W\n";

    [Theory]
    [InlineData("two words")]
    [InlineData("it's \"14\"")]
    [InlineData("Пиммур 鉄 é ß İ")]
    [InlineData("-rf")]
    [InlineData("%20 & $HOME ; `ls` * ?")]
    [InlineData("tab\there")]
    [InlineData("@reply")]
    [InlineData("[suggest]")]
    public async Task A_folder_of_that_name_is_read(string name)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "names of Unix");
        using var folder = new TemporaryFolder();
        string bike = Path.Combine(folder.Path, name);
        Directory.CreateDirectory(bike);
        File.WriteAllText(Path.Combine(bike, "lamps.csv"), Lamps);
        CliResult result = await InProcess.Run("load", bike, "--format", "csv");
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        Assert.Contains("stop lamp", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_given_from_where_one_stands_may_begin_with_a_hyphen_or_an_at_sign()
    {
        using var folder = new TemporaryFolder();
        foreach (string name in new[] { "-twin", "@twin" })
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, name));
            File.WriteAllText(Path.Combine(folder.Path, name, "lamps.csv"), Lamps);
            CliResult result = CliProcess.RunIn(folder.Path, "load", $"./{name}", "--format", "csv");
            Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        }
    }

    [Fact]
    public async Task A_message_about_an_odd_name_stays_on_one_line()
    {
        CliResult result = await InProcess.Run("load", "no such\nbike\u001b[31m");
        Assert.Equal(2, result.ExitCode);
        Assert.Single(result.Errors.TrimEnd().Split('\n'));
        Assert.DoesNotContain('\u001b', result.Errors);
    }

    [Fact]
    public async Task Links_and_steps_upwards_lead_to_the_bike()
    {
        using var folder = new TemporaryFolder();
        string real = Path.Combine(folder.Path, "real"),
            link = Path.Combine(folder.Path, "link"),
            links = Path.Combine(folder.Path, "links");
        Directory.CreateDirectory(real);
        Directory.CreateDirectory(links);
        File.WriteAllText(Path.Combine(real, "lamps.csv"), Lamps);
        Directory.CreateSymbolicLink(link, real);
        File.CreateSymbolicLink(Path.Combine(links, "lamps.csv"), Path.Combine(real, "lamps.csv"));
        string plain = (await InProcess.Run("load", real, "--format", "json")).Output;
        Assert.NotEmpty(plain);
        foreach (
            string path in new[]
            {
                link,
                links,
                Path.Combine(link, "lamps.csv"),
                Path.Combine(real, "..", "real", "."),
                real + "/",
            }
        )
            Assert.Equal(plain, (await InProcess.Run("load", path, "--format", "json")).Output);
    }

    [Fact]
    public async Task A_link_that_leads_nowhere_is_a_message()
    {
        using var folder = new TemporaryFolder();
        File.CreateSymbolicLink(Path.Combine(folder.Path, "lamps.csv"), Path.Combine(folder.Path, "gone.csv"));
        CliResult result = await InProcess.Run("load", folder.Path);
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains("lamps.csv: cannot be read", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_where_a_list_should_be_is_a_message()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "lamps.csv"));
        CliResult result = await InProcess.Run("load", folder.Path);
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains("lamps.csv", result.Errors, StringComparison.Ordinal);
    }
}
