using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Adds to the help what the command line library does not know: examples that work as typed, files, exit
/// status.</summary>
internal static class ExampleHelp
{
    private const string Manual = """
        Files:
          BIKE is a folder of CSV lists. lamps.csv is required; each of bike.csv, runs.csv,
          switches.csv, fuses.csv, relays.csv, charging.csv, ride.csv, swaps.csv, readings.csv and
          prices.csv that is added makes the answer more exact. A single file given for BIKE is a lamps.csv.

        Exit status:
          0  All that was asked was judged, and suits.
          1  Something does not suit, or was not judged.
          2  The input is wrong, or the result cannot be written; each message says what.
          3  A fault of the program's own.

        Environment:
          NO_COLOR  When set, no colour on a terminal either.

        """;

    /// <summary>Adds examples to a command's help.</summary>
    public static Command WithExample(this Command command, params string[] examples)
    {
        var help = new HelpOption();
        string head = examples.Length == 1 ? "Example:" : "Examples:";
        help.Action = new Action(
            (HelpAction)help.Action!,
            $"{head}\n{string.Join('\n', examples.Select(e => $"  {e}"))}\n"
        );
        command.Add(help);
        return command;
    }

    /// <summary>Adds files and exit status to the help of the whole program.</summary>
    public static RootCommand WithManual(this RootCommand root)
    {
        HelpOption help = root.Options.OfType<HelpOption>().First();
        help.Action = new Action((HelpAction)help.Action!, Manual);
        help.Recursive = false; // every command has its own
        return root;
    }

    private sealed class Action(HelpAction standard, string rest) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            int result = standard.Invoke(parseResult);
            parseResult.InvocationConfiguration.Output.WriteLine(rest);
            return result;
        }
    }
}
