using System.CommandLine;
using Lighting.Calc.Cli.Rendering;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>tables</c>: the published tables the answers rest on, with sources.</summary>
internal static class TablesCommand
{
    public static Command Create(CommandConsole console)
    {
        var command = new Command("tables", "The published tables behind the answers, with the source of each row.");
        Argument<string?> name = new("TABLE")
        {
            HelpName = "TABLE",
            Description = "One of the tables; without it they are listed.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        command.Add(name);
        name.CompletionSources.Add(_ =>
            PublishedTable.Names.Select(n => new System.CommandLine.Completions.CompletionItem(n))
        );
        var output = new OutputOptions(command);
        command.SetAction(
            (parsed, _) =>
            {
                string? wanted = parsed.GetValue(name);
                if (wanted is not null && !PublishedTable.Names.Contains(wanted))
                    throw new InputException(
                        $"there is no table '{wanted}'; the tables are {string.Join(", ", PublishedTable.Names)}."
                    );
                if (wanted is null)
                    output.Write(parsed, console, TablesDocument.OfAll());
                else
                    output.Write(parsed, console, TablesDocument.Of(PublishedTable.Load(wanted)));
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample("lighting-calc tables", "lighting-calc tables lead-acid");
    }
}
