using System.CommandLine;
using System.CommandLine.Invocation;
using Lighting.Calc.Cli.Commands;

namespace Lighting.Calc.Cli;

/// <summary>The command line: parses the words, runs one command, turns its outcome into messages and an exit
/// status.</summary>
internal sealed class Application(
    TextWriter output,
    TextWriter messages,
    bool isTerminal,
    bool showsProgress,
    Func<Stream>? input = null,
    TextReader? answers = null,
    bool asks = false
)
{
    public async Task<int> RunAsync(string[] words)
    {
        var errors = new VisibleWriter(messages);
        var console = new CommandConsole(output, errors, isTerminal, showsProgress, input ?? Console.OpenStandardInput)
        {
            Answers = answers ?? TextReader.Null,
            Asks = asks,
        };
        RootCommand root = Build(console);
        using var interruption = new Interruption();
        ParseResult parsed = root.Parse(words);
        // Help, the version and completion answer whatever else is typed.
        bool isAnswered = parsed.Action is not ParseErrorAction && parsed.Action != parsed.CommandResult.Command.Action;
        IReadOnlyList<string> problems = isAnswered ? [] : CommandLineProblems.Of(parsed);
        if (problems.Count > 0)
        {
            foreach (string message in problems)
                errors.WriteLine($"lighting-calc: {message}");
            errors.WriteLine("lighting-calc: see 'lighting-calc --help' or 'lighting-calc COMMAND --help'.");
            return ExitCode.WrongInput;
        }

        try
        {
            int status = await parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    Output = output,
                    Error = errors,
                    EnableDefaultExceptionHandler = false,
                    ProcessTerminationTimeout = null,
                },
                interruption.Token
            );
            await output.FlushAsync();
            return status;
        }
        catch (InputException wrong) when (!wrong.IsOfOutput && OutputOptions.AsksForJson(parsed))
        {
            output.WriteLine(FaultsJson.Of(wrong));
            await output.FlushAsync();
            return ExitCode.WrongInput;
        }
        catch (InputException wrong)
        {
            foreach (string message in wrong.Messages)
                errors.WriteLine($"lighting-calc: {message}");
            return ExitCode.WrongInput;
        }
        catch (IOException enough) when (ClosedPipe.Is(enough))
        {
            return ExitCode.Suits;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // Lists and --out report their own; what is left is standard output, such as a full disk behind it.
            errors.WriteLine($"lighting-calc: the result cannot be written: {problem.Message}");
            return ExitCode.WrongInput;
        }
        catch (OperationCanceledException)
        {
            errors.WriteLine("lighting-calc: stopped.");
            return interruption.Status;
        }
        // The last resort: whatever went wrong is reported with its own status, never as a result.
#pragma warning disable CA1031
        catch (Exception fault)
#pragma warning restore CA1031
        {
            errors.WriteLine($"lighting-calc: an error in the program itself: {PlainMessage.Of(fault)}");
            errors.WriteLine(fault.ToString());
            return ExitCode.ProgramFault;
        }
    }

    private static RootCommand Build(CommandConsole console) =>
        new RootCommand(
            "Loads, fuses, voltage drops and charging of an older motorcycle's lighting, from lists that a spreadsheet "
                + "can edit."
        )
        {
            CheckCommand.Create(console),
            LoadCommand.Create(console),
            FuseCommand.Create(console),
            DropCommand.Create(console),
            WireCommand.Create(console),
            LoomCommand.Create(console),
            ChargingCommand.Create(console),
            CompareCommand.Create(console),
            SwapCommand.Create(console),
            ReadingsCommand.Create(console),
            FaultsCommand.Create(console),
            DiagramCommand.Create(console),
            NewCommand.Create(console),
            TablesCommand.Create(console),
        }.WithManual();
}
