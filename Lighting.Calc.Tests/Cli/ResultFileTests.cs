using Lighting.Calc.Cli.Commands;

namespace Lighting.Calc.Tests.Cli;

/// <summary>What may stand in the way of a result: full disks, devices, links, folders, a process that is
/// killed.</summary>
public class ResultFileTests
{
    private static readonly string s_twin = CliProcess.Bike("valley-twin");

    [Theory]
    [InlineData("/dev/null", true)]
    [InlineData("/dev/full", true)]
    [InlineData("/dev/fd/63", true)]
    [InlineData("/proc/self/fd/1", true)]
    [InlineData(@"\\.\NUL", true)]
    [InlineData("/dev/shm/result.json", false)]
    [InlineData("/devices/result.json", false)]
    [InlineData("/home/pinmoor/dev/null", false)]
    public void A_device_is_known_by_its_name_so_that_it_is_never_replaced(string path, bool expected) =>
        Assert.Equal(expected, ResultFile.IsDevice(path));

    [Fact]
    public void A_result_may_go_to_a_pipe_that_has_a_name()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "named pipes are files on Unix only");
        using var folder = new TemporaryFolder();
        string pipe = Path.Combine(folder.Path, "result");
        CliResult result = Shell.Run(
            $"""mkfifo "$1" && (cat "$1" & {CliProcess.Typed} drop --current 8A --length 1m --wire 18AWG --volts 12V --out "$1"; wait); test -p "$1" || exit 9""",
            pipe
        );
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        Assert.StartsWith("Voltage drop of one run\n", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("lamps.csv")]
    [InlineData("../bike/lamps.csv")]
    [InlineData("LAMPS.CSV/../lamps.csv", false)]
    [InlineData("link.txt")]
    [InlineData("linked folder/switches.csv")]
    public async Task A_list_that_is_read_is_never_replaced(string target, bool isThere = true)
    {
        using var folder = new TemporaryFolder();
        string bike = Directory.CreateDirectory(Path.Combine(folder.Path, "bike")).FullName;
        foreach (string list in Directory.GetFiles(s_twin))
            File.Copy(list, Path.Combine(bike, Path.GetFileName(list)));
        File.CreateSymbolicLink(Path.Combine(bike, "link.txt"), Path.Combine(bike, "lamps.csv"));
        Directory.CreateSymbolicLink(Path.Combine(bike, "linked folder"), bike);
        CliResult result = await InProcess.Run("load", bike, "--format", "csv", "--out", Path.Combine(bike, target));
        if (isThere)
            Assert.Equal(
                (
                    2,
                    $"lighting-calc: --out '{Path.Combine(bike, target)}' is one of the lists that are read; name "
                        + $"another file.\n"
                ),
                (result.ExitCode, result.Errors)
            );
        foreach (string list in Directory.GetFiles(s_twin))
            Assert.Equal(File.ReadAllText(list), File.ReadAllText(Path.Combine(bike, Path.GetFileName(list))));
    }

    [Theory]
    [InlineData("swap", "--swaps")]
    [InlineData("faults", "--priors")]
    public async Task A_list_that_an_option_names_is_never_replaced(string command, string option)
    {
        using var folder = new TemporaryFolder();
        string list = folder.Write(
                "own.csv",
                option == "--priors"
                    ? "fault,weight\nlamp dead,2\n"
                    : File.ReadAllText(Path.Combine(s_twin, "swaps.csv"))
            ),
            before = File.ReadAllText(list);
        CliResult result = await InProcess.Run(command, s_twin, option, list, "--out", list);
        Assert.Equal(2, result.ExitCode);
        Assert.Equal(before, File.ReadAllText(list));
    }

    [Fact]
    public async Task A_result_may_stand_beside_the_lists()
    {
        using var folder = new TemporaryFolder();
        string lamps = folder.Write("lamps.csv", "circuit,lamp,volts,watts\nrear,tail,12,5\n");
        Assert.Equal(0, (await InProcess.Run("load", lamps, "--out", Path.Combine(folder.Path, "load.txt"))).ExitCode);
    }

    [Fact]
    public async Task A_link_stays_and_the_file_it_points_to_gets_the_result()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.txt", "earlier"),
            link = Path.Combine(folder.Path, "link.txt");
        File.CreateSymbolicLink(link, file);
        Assert.Equal(0, (await InProcess.Run("load", s_twin, "--out", link)).ExitCode);
        Assert.Equal(file, new FileInfo(link).LinkTarget);
        Assert.StartsWith("Load: ", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Equal(2, Directory.GetFiles(folder.Path).Length);
    }

    [Fact]
    public async Task A_link_to_a_file_that_is_yet_to_be_makes_that_file()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "result.txt"),
            link = Path.Combine(folder.Path, "link.txt");
        File.CreateSymbolicLink(link, file);
        Assert.Equal(0, (await InProcess.Run("load", s_twin, "--out", link)).ExitCode);
        Assert.Equal(file, new FileInfo(link).LinkTarget);
        Assert.True(File.Exists(file));
    }

    [Fact]
    public async Task A_link_that_leads_to_itself_is_one_message()
    {
        using var folder = new TemporaryFolder();
        string link = Path.Combine(folder.Path, "link.txt");
        File.CreateSymbolicLink(link, link);
        await Refused(link, "");
    }

    [Fact]
    public async Task The_names_of_folders_may_hold_anything_and_lead_up_again()
    {
        using var folder = new TemporaryFolder();
        string odd = Path.Combine(folder.Path, "van's \"twin\"  Пиммур 鉄 é");
        Directory.CreateDirectory(odd);
        string file = Path.Combine(odd, "..", Path.GetFileName(odd), "an swer.txt");
        Assert.Equal(0, (await InProcess.Run("load", s_twin, "--out", file)).ExitCode);
        Assert.StartsWith("Load: ", File.ReadAllText(Path.Combine(odd, "an swer.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_permissions_of_an_earlier_result_stay()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "permissions of Unix");
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.txt", "earlier");
        const UnixFileMode mode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(file, mode);
        Assert.Equal(0, (await InProcess.Run("load", s_twin, "--out", file)).ExitCode);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(mode, File.GetUnixFileMode(file));
    }

    [Fact]
    public async Task An_earlier_result_may_be_open_elsewhere_and_is_then_replaced_whole()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "an open file cannot be replaced there, which is one message");
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.txt", "earlier");
        using var reader = new StreamReader(file);
        Assert.Equal(0, (await InProcess.Run("load", s_twin, "--out", file)).ExitCode);
        Assert.Equal("earlier", reader.ReadToEnd());
        Assert.StartsWith("Load: ", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/proc/nowhere.txt", "")]
    [InlineData("/nowhere/at/all.txt", "there is no such folder")]
    [InlineData("", "")]
    [InlineData("/", "")]
    public async Task A_place_that_cannot_be_written_is_one_message(string path, string expected)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "names of Linux");
        await Refused(path, expected);
    }

    [Fact]
    public async Task A_full_device_is_one_message()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "devices of Linux");
        Assert.SkipWhen(
            Environment.IsPrivilegedProcess,
            "were the program wrong, a privileged user's device would be lost"
        );
        await Refused("/dev/full", "No space left on device");
    }

    [Fact]
    public async Task A_folder_is_not_a_file_for_a_result()
    {
        using var folder = new TemporaryFolder();
        await Refused(folder.Path, "it is a folder");
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task A_folder_that_may_not_be_written_is_one_message()
    {
        Assert.SkipWhen(
            OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess,
            "a privileged user may write everywhere"
        );
        using var folder = new TemporaryFolder();
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder.Path, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        await Refused(Path.Combine(folder.Path, "result.txt"), "denied");
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(
                folder.Path,
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
            );
    }

    // A limit of 1 KiB on the size of files stands in for a disk that fills up; its signal is ignored.
    [Fact]
    public void A_disk_that_fills_up_keeps_the_earlier_result_and_leaves_no_half_one()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "limits of Linux");
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.json", "earlier");
        CliResult result = Shell.Run(
            $"""{Limited} trap "" XFSZ; {CliProcess.Typed} load "$1" --format json --out "$2" """,
            s_twin,
            file
        );
        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith(
            $"lighting-calc: --out '{file}' cannot be written: ",
            result.Errors,
            StringComparison.Ordinal
        );
        Assert.Single(result.Errors.TrimEnd().Split('\n'));
        Assert.Equal("earlier", File.ReadAllText(file));
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    // The same limit with its signal, which kills the process in the middle of its writing.
    [Fact]
    public void A_process_killed_while_it_writes_keeps_the_earlier_result()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "limits of Linux");
        using var folder = new TemporaryFolder();
        string file = folder.Write("result.json", "earlier");
        CliResult result = Shell.Run(
            $"""{Limited} {CliProcess.Typed} load "$1" --format json --out "$2" """,
            s_twin,
            file
        );
        Assert.Equal(128 + 25, result.ExitCode); // by SIGXFSZ
        Assert.Equal("earlier", File.ReadAllText(file));
        Assert.Equal(1024, new FileInfo(Assert.Single(Directory.GetFiles(folder.Path), f => f != file)).Length);
    }

    [Fact]
    [Trait("time", "long")]
    public void A_closed_standard_output_is_one_message()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The shell is bash.");
        CliResult result = Shell.Run($"{CliProcess.Typed} load \"$1\" >&-", s_twin);
        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("lighting-calc: the result cannot be written:", result.Errors, StringComparison.Ordinal);
        Assert.Single(result.Errors.Trim().Split('\n'));
    }

    [Fact]
    [Trait("time", "long")]
    public void Two_results_stand_in_one_file_one_after_the_other()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The shell is bash.");
        using var folder = new TemporaryFolder();
        string one = Shell.Run($"{CliProcess.Typed} load \"$1\"", s_twin).Output;
        CliResult both = Shell.Run(
            $"({CliProcess.Typed} load \"$1\"; {CliProcess.Typed} load \"$1\") > \"$2/both.txt\"; cat \"$2/both.txt\"",
            s_twin,
            folder.Path
        );
        Assert.Equal(one + one, both.Output);
    }

    [Theory]
    [InlineData("load \"$1\"")]
    [InlineData("load \"$1\" --format json", Traits = ["time", "long"])]
    [InlineData("--help")]
    public void A_full_disk_behind_standard_output_is_one_message(string words)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "devices of Linux");
        CliResult result = Shell.Run($"{CliProcess.Typed} {words} > /dev/full", s_twin);
        Assert.Equal(
            (2, "lighting-calc: the result cannot be written: No space left on device\n"),
            (result.ExitCode, result.Errors)
        );
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json", Traits = ["time", "long"])]
    public void A_reader_that_has_seen_enough_ends_the_program_quietly(string format)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "a shell of Unix");
        CliResult result = Shell.Run(
            $"set -o pipefail; {CliProcess.Typed} load \"$1\" --format {format} | head -c 4",
            s_twin
        );
        Assert.Equal((0, ""), (result.ExitCode, result.Errors));
        Assert.Equal(4, result.Output.Length);
    }

    [Fact]
    public void Output_that_is_not_a_terminal_is_UTF8_in_any_locale()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "a shell of Unix");
        using var folder = new TemporaryFolder();
        string lamps = folder.Write("lamps.csv", "circuit,lamp,code\nрыба,stop lamp,P21W\n");
        CliResult result = Shell.Run($"LC_ALL=de_DE.ISO-8859-1 {CliProcess.Typed} load \"$1\" --format csv", lamps);
        Assert.Contains("рыба", result.Output, StringComparison.Ordinal);
    }

    private const string Limited =
        "export DOTNET_EnableWriteXorExecute=0 DOTNET_EnableDiagnostics=0; ulimit -c 0; ulimit -f 1;";

    private static async Task Refused(string path, string expected)
    {
        CliResult result = await InProcess.Run("load", s_twin, "--out", path);
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.StartsWith(
            $"lighting-calc: --out '{path}' cannot be written: ",
            result.Errors,
            StringComparison.Ordinal
        );
        Assert.Contains(expected, result.Errors, StringComparison.Ordinal);
        Assert.Single(result.Errors.TrimEnd().Split('\n'));
    }
}
