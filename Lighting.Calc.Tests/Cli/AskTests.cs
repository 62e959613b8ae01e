using Lighting.Calc.Cli;

namespace Lighting.Calc.Tests.Cli;

public class AskTests
{
    private const string Bike = "shared/bikes/valley-twin";

    [Fact]
    public async Task Answers_are_kept_in_the_list_and_carried_on()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "readings.csv");
        CliResult first = await Ask(file, "good\nquit\n");
        Assert.Contains("Test 1: ", first.Output, StringComparison.Ordinal);
        Assert.Contains("Test 2: ", first.Output, StringComparison.Ordinal);
        string[] rows = await File.ReadAllLinesAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal(2, rows.Length);
        CliResult second = await Ask(file, "");
        Assert.DoesNotContain("Test 1: ", second.Output, StringComparison.Ordinal);
        Assert.Contains("Test 2: ", second.Output, StringComparison.Ordinal);
        Assert.Equal((await InProcess.RunLine($"faults {Bike} {file} --format csv")).ExitCode, second.ExitCode);
    }

    [Fact]
    public async Task A_test_that_is_skipped_is_not_asked_for_again_and_undo_takes_the_last_answer_back()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "readings.csv");
        CliResult skipped = await Ask(file, "skip\n");
        string[] tests = [.. skipped.Output.Split('\n').Where(l => l.StartsWith("Test ", StringComparison.Ordinal))];
        Assert.Equal(2, tests.Length);
        Assert.NotEqual(tests[0], tests[1]);
        Assert.Contains(
            "skipped",
            await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        CliResult undone = await Ask(file, "undo\n");
        Assert.Contains(tests[0], undone.Output, StringComparison.Ordinal);
        Assert.Single(await File.ReadAllLinesAsync(file, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_round_of_the_lamps_is_one_test_and_takes_those_that_look_wrong()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "readings.csv");
        CliResult asked = await Ask(file, "purple\ntail lamp dark, stop lamp out\nquit\n");
        Assert.Contains("look at every lamp", asked.Output, StringComparison.Ordinal);
        Assert.Contains("'purple' is no answer to this test: good, or", asked.Output, StringComparison.Ordinal);
        Assert.Contains("Test 2: ", asked.Output, StringComparison.Ordinal);
        string[] rows = await File.ReadAllLinesAsync(file, TestContext.Current.CancellationToken);
        Assert.Contains(rows, r => r.Contains("tail lamp,visual,dark", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.Contains("stop lamp,visual,dark", StringComparison.Ordinal));
        Assert.Contains(rows, r => r.Contains("left indicators,visual,", StringComparison.Ordinal));
        CliResult undone = await Ask(file, "");
        Assert.Contains("Test 2: ", undone.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_answer_is_asked_again_and_a_question_mark_says_why()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "readings.csv");
        CliResult asked = await Ask(file, "banana\n?\n");
        Assert.Contains("'banana' is no answer to this test: ", asked.Output, StringComparison.Ordinal);
        Assert.Contains(" %)", asked.Output, StringComparison.Ordinal);
        Assert.False(File.Exists(file));
    }

    [Fact]
    public async Task A_blown_fuse_is_led_to_its_repair()
    {
        using var folder = new TemporaryFolder();
        string file = Path.Combine(folder.Path, "readings.csv");
        CliResult asked = await Ask(
            file,
            "",
            "--reading",
            "ignition=on: fuse in 12.6 V",
            "--reading",
            "ignition=on: fuse out 0 V"
        );
        Assert.Contains("The fuse 'main' has blown (", asked.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("ammeter in place", asked.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("jumper", asked.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_of_the_answers_and_another_are_not_read_together()
    {
        CliResult both = await InProcess.RunLine($"faults {Bike} other.csv --ask readings.csv");
        Assert.Equal(2, both.ExitCode);
        Assert.Contains("--ask keeps its own list of readings", both.Errors, StringComparison.Ordinal);
    }

    private static async Task<CliResult> Ask(string file, string answers, params string[] more)
    {
        var output = new StringWriter();
        var errors = new StringWriter();
        var application = new Application(
            output,
            errors,
            isTerminal: false,
            showsProgress: false,
            answers: new StringReader(answers)
        );
        int status = await application.RunAsync([
            "faults",
            Path.Combine(CliProcess.Root, Bike),
            "--ask",
            file,
            .. more,
        ]);
        return new CliResult(status, output.ToString(), errors.ToString());
    }
}
