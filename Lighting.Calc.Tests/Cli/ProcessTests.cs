namespace Lighting.Calc.Tests.Cli;

/// <summary>The built program as a process does what it does inside a test; the other tests of commands run it
/// there.</summary>
public class ProcessTests
{
    [Theory]
    [InlineData(0, "check shared/bikes/valley-twin")]
    [InlineData(0, "fuse shared/bikes/chapel-single --format json")]
    [InlineData(2, "load shared/bikes/no-such-bike")]
    [InlineData(2, "chekc")]
    public async Task Status_output_and_messages_are_those_of_a_run_in_process(int status, string line)
    {
        CliResult result = CliProcess.Run(line.Split(' '));
        Assert.Equal(status, result.ExitCode);
        Assert.Equal(await InProcess.RunLine(line), result);
    }
}
