using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Adds an example that works as typed to a command's help.</summary>
internal static class ExampleHelp
{
    public static Command WithExample(this Command command, params string[] examples)
    {
        var help = new HelpOption();
        help.Action = new Action((HelpAction)help.Action!, examples);
        command.Add(help);
        return command;
    }

    private sealed class Action(HelpAction standard, IReadOnlyList<string> examples) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            int result = standard.Invoke(parseResult);
            TextWriter output = parseResult.InvocationConfiguration.Output;
            output.WriteLine(examples.Count == 1 ? "Example:" : "Examples:");
            foreach (string example in examples)
                output.WriteLine($"  {example}");
            output.WriteLine();
            return result;
        }
    }
}
