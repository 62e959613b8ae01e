namespace Lighting.Calc.Tests.Cli;

/// <summary>Numbers that no lighting has: refused with a message wherever a person can write one.</summary>
public class HardNumberTests
{
    public static TheoryData<string> Numbers =>
        [
            "NaN",
            "nan",
            "Infinity",
            "-Infinity",
            "∞",
            "1e308",
            "1e309",
            "-1e308",
            "5e-324",
            "1e-310",
            "1e400",
            "0x10",
            "1_000",
            "٣",
            "１",
            "--5",
            "1e",
            "+",
            "12V12",
        ];

    [Theory]
    [MemberData(nameof(Numbers))]
    public async Task In_any_cell_of_a_list(string number)
    {
        using var folder = new TemporaryFolder();
        folder.Write(
            "bike.csv",
            $"item,value\nsystem voltage,{number}\nbattery capacity,{number}\nbattery resistance,{number}\nwire "
                + $"temperature,{number}\nallowed drop,{number}\n"
        );
        folder.Write(
            "lamps.csv",
            $"circuit,lamp,type,quantity,volts,watts,duty,feed,return\nstop,stop "
                + $"lamp,filament,{number},{number},{number},{number},a,battery -\n"
        );
        folder.Write(
            "runs.csv",
            $"run,from,to,wire,length,joints,joint resistance,bundle\nred,battery +,a,{number} "
                + $"mm2,{number},{number},{number},{number}\n"
        );
        folder.Write("fuses.csv", $"fuse,from,to,rating,resistance\nmain,battery +,a,{number},{number}\n");
        folder.Write("charging.csv", $"rpm,current\n{number},{number}\n");
        folder.Write("ride.csv", $"stretch,rpm,minutes\ntown,{number},{number}\n");
        CliResult result = await InProcess.Run("check", folder.Path);
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        string[] messages = result.Errors.TrimEnd().Split('\n');
        Assert.All(messages, m => Assert.StartsWith("lighting-calc: ", m, StringComparison.Ordinal));
        foreach (
            string cell in new[]
            {
                "bike.csv:2:",
                "bike.csv:3:",
                "bike.csv:4:",
                "bike.csv:5:",
                "bike.csv:6:",
                "lamps.csv:2: column 'quantity'",
                "lamps.csv:2: column 'volts'",
                "lamps.csv:2: column 'watts'",
                "lamps.csv:2: column 'duty'",
                "runs.csv:2: column 'wire'",
                "runs.csv:2: column 'length'",
                "runs.csv:2: column 'joints'",
                "runs.csv:2: column 'joint resistance'",
                "runs.csv:2: column 'bundle'",
                "fuses.csv:2: column 'rating'",
                "fuses.csv:2: column 'resistance'",
                "charging.csv:2: column 'rpm'",
                "charging.csv:2: column 'current'",
                "ride.csv:2: column 'rpm'",
                "ride.csv:2: column 'minutes'",
            }
        )
            Assert.True(
                messages.Any(m => m.Contains(cell, StringComparison.Ordinal)),
                $"no message for {cell} among\n{result.Errors}"
            );
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public async Task In_any_option(string number)
    {
        string twin = CliProcess.Bike("valley-twin");
        foreach (
            string[] words in new string[][]
            {
                ["check", twin, $"--fuse={number}"],
                ["load", twin, $"--volts={number}"],
                ["charging", twin, "--regulator", "shunt", $"--shunt-limit={number}"],
                ["charging", twin, $"--field={number}"],
                ["charging", twin, $"--charge={number}"],
                ["drop", $"--current={number}", "--length", "1m", "--wire", "18AWG", "--volts", "12V"],
                ["drop", "--current", "1A", $"--length={number}", "--wire", "18AWG", "--volts", "12V"],
                ["drop", "--current", "1A", "--length", "1m", $"--wire={number}AWG", "--volts", "12V"],
                ["drop", "--current", "1A", "--length", "1m", "--wire", "18AWG", $"--volts={number}"],
                [
                    "drop",
                    "--current",
                    "1A",
                    "--length",
                    "1m",
                    "--wire",
                    "18AWG",
                    "--volts",
                    "12V",
                    $"--temperature={number}",
                ],
                ["wire", $"--current={number}", "--length", "1m", "--volts", "12V"],
            }
        )
        {
            CliResult result = await InProcess.Run(words);
            Assert.True(
                (result.ExitCode, result.Output) == (2, ""),
                $"{string.Join(' ', words)}: {result.ExitCode} {result.Errors}"
            );
            Assert.Single(result.Errors.TrimEnd().Split('\n'));
        }
    }

    [Theory]
    [InlineData("check")]
    [InlineData("charging")]
    [InlineData("drop")]
    [InlineData("wire")]
    [InlineData("swap")]
    [InlineData("readings")]
    public async Task The_largest_bike_that_the_lists_allow_is_computed_or_refused(string command)
    {
        using var folder = new TemporaryFolder();
        folder.Write("bike.csv", "item,value\nbattery resistance,0\nbattery capacity,1000\n");
        folder.Write(
            "lamps.csv",
            "circuit,lamp,type,quantity,volts,watts,feed,return\nstop,stop lamp,filament,100,12,2000,a,battery "
                + "-\nstop,small one,filament,1,12,0.001,a,battery -\n"
        );
        folder.Write("runs.csv", "run,from,to,wire,length\nred,b,a,0.35 mm2,100\n");
        folder.Write("fuses.csv", "fuse,from,to,rating,resistance\nmain,battery +,b,30,0\n");
        folder.Write("charging.csv", "rpm,current\n0,0\n20000,100\n");
        folder.Write("swaps.csv", "lamp,new code,type,volts,watts\nsmall one,,led,12,2000\n");
        CliResult result = await InProcess.Run(command, folder.Path, "--format", "json");
        Assert.True(result.ExitCode is 0 or 1 or 2, result.Errors);
        Assert.Equal(result.ExitCode == 2, result.Output.Length == 0);
        Assert.DoesNotContain("NaN", result.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", result.Output, StringComparison.Ordinal);
    }
}
