using System.Diagnostics;
using System.Globalization;

namespace Lighting.Calc.Tests.Cli;

/// <summary>Many bikes, stopped half way with Ctrl-C or by a reader that has enough.</summary>
public sealed class FleetInterruptTests : IDisposable
{
    // Returns as soon as the program has opened the pipe.
    private const string OpenedToWrite = "exec 9>\"$1\"";

    // A folder of some bikes, given so many times over that no machine is done before it is stopped.
    private const int Bikes = 50,
        Times = 1000;

    // What starts in the background or under nohup has interrupts ignored, and so have its children unless env restores
    // them.
    private static readonly string[]? s_program =
        OperatingSystem.IsWindows() ? null
        : Shell.Run("kill -INT $$; echo ignored").Output.Length == 0 ? ["dotnet"]
        : Shell.Run("env --default-signal=INT true").ExitCode == 0 ? ["env", "--default-signal=INT", "dotnet"]
        : null;

    private readonly TemporaryFolder _folder = new();
    private readonly string _fleet;

    public FleetInterruptTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent with kill.");
        _fleet = Path.Combine(_folder.Path, "fleet");
        Directory.CreateDirectory(_fleet);
        for (int i = 0; i < Bikes; i++)
            Directory.CreateSymbolicLink(Folder(i), CliProcess.Bike("valley-twin"));
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Ctrl_C_leaves_whole_rows_only()
    {
        using Process process = Start();
        string header = (await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!;
        string first = (await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken))!;
        Interrupt(process);
        string rest = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.NotEqual(0, process.ExitCode);
        // On a busy machine the first row may be the last.
        Assert.True(rest.Length == 0 || rest.EndsWith("\r\n", StringComparison.Ordinal), rest);
        string[] rows = [first, .. rest.Split("\r\n", StringSplitOptions.RemoveEmptyEntries)];
        Assert.InRange(rows.Length, 1, Bikes * Times - 1);
        string tail = first[first.IndexOf(',', StringComparison.Ordinal)..];
        for (int i = 0; i < rows.Length; i++)
            Assert.Equal($"{Folder(i % Bikes)}{tail}", rows[i]);
        Assert.StartsWith("folder,", header, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ctrl_C_leaves_an_earlier_file_as_it_was()
    {
        string file = _folder.Write("rows.csv", "earlier\n");
        using Process process = Start("--out", file);
        // Its neighbour shows that rows are being written.
        while (
            Directory.GetFiles(_folder.Path, "rows.csv.*").All(f => new FileInfo(f).Length == 0) && !process.HasExited
        )
            await Task.Delay(20, TestContext.Current.CancellationToken);
        Interrupt(process);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.NotEqual(0, process.ExitCode);
        Assert.Equal("earlier\n", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        Assert.Equal([file], Directory.GetFiles(_folder.Path));
    }

    // Nobody writes to the pipe: reading it never ends by itself, nor does opening it until somebody opens it to write.
    [Theory]
    [InlineData("INT", 130, OpenedToWrite)]
    [InlineData("TERM", 143, OpenedToWrite)]
    [InlineData("INT", 130, "sleep 5", Traits = ["time", "long"])]
    [InlineData("TERM", 143, "sleep 5", Traits = ["time", "long"])]
    public void Reading_that_waits_is_stopped(string signal, int status, string until)
    {
        string pipe = Path.Combine(_folder.Path, "pipe");
        Assert.Equal(0, Shell.Run("mkfifo \"$1\"", pipe).ExitCode);
        // What a shell starts in the background has interrupts ignored.
        Assert.SkipWhen(
            Shell.Run("env --default-signal=INT true").ExitCode != 0,
            "There is no env that restores interrupts (coreutils 8.31 or later)."
        );
        CliResult result = Shell.Run(
            $$"""
            env --default-signal=INT dotnet "$2" check "$1" --fuse 15A & program=$!
            {{until}}; kill -{{signal}} $program; wait $program; echo $?
            """,
            pipe,
            Path.Combine(AppContext.BaseDirectory, "lighting-calc.dll")
        );
        Assert.Equal($"{status}\n", result.Output);
    }

    // Within the grace of the first the status is that of the second only where this is acted on at once.
    [Fact]
    public void A_second_signal_ends_at_once_and_quietly()
    {
        string pipe = Path.Combine(_folder.Path, "pipe");
        Assert.Equal(0, Shell.Run("mkfifo \"$1\"", pipe).ExitCode);
        Assert.SkipWhen(
            Shell.Run("env --default-signal=INT true").ExitCode != 0,
            "There is no env that restores interrupts (coreutils 8.31 or later)."
        );
        CliResult result = Shell.Run(
            $"""
            env --default-signal=INT dotnet "$2" check "$1" --fuse 15A & program=$!
            {OpenedToWrite}; kill -INT $program; sleep 0.1; kill -TERM $program; wait $program; echo $?
            """,
            pipe,
            Path.Combine(AppContext.BaseDirectory, "lighting-calc.dll")
        );
        Assert.Equal("143\n", result.Output);
        Assert.Equal("", result.Errors);
    }

    [Fact]
    public void A_reader_that_leaves_ends_the_work()
    {
        // A wrong bike, the last, would make the status 2.
        CliResult result = Shell.Run(
            $"{CliProcess.Typed} check \"$@\" --format csv | head -2 | tail -1; echo ${{PIPESTATUS[0]}}",
            [.. Enumerable.Repeat(_fleet, Times), _folder.Write("wrong.csv", "no such column\n")]
        );
        string[] lines = result.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.StartsWith(Folder(0), lines[0], StringComparison.Ordinal);
        Assert.Equal("0", lines[1]);
        Assert.Equal("", result.Errors);
    }

    private string Folder(int bike) => Path.Combine(_fleet, bike.ToString("00", CultureInfo.InvariantCulture));

    private Process Start(params string[] more)
    {
        Assert.SkipWhen(
            s_program is null,
            "Interrupts are ignored here, and there is no env that restores them (coreutils 8.31 or later)."
        );
        var start = new ProcessStartInfo(s_program[0]) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (
            string word in (string[])
                [
                    .. s_program[1..],
                    Path.Combine(AppContext.BaseDirectory, "lighting-calc.dll"),
                    "check",
                    .. Enumerable.Repeat(_fleet, Times),
                    "--format",
                    "csv",
                    .. more,
                ]
        )
            start.ArgumentList.Add(word);
        return Process.Start(start)!;
    }

    private static void Interrupt(Process process)
    {
        using Process kill = Process.Start("kill", ["-INT", process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }
}
