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
        Argument<string[]> words = new("WORD")
        {
            HelpName = "WORD",
            Description = "Only the rows in which all these words stand, such as H4 or BA15s.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        Option<bool> all = new("--all") { Description = "Every column of the lamps, as printed, with sources." };
        command.Add(name);
        command.Add(words);
        command.Add(all);
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
                    output.Write(parsed, console, Of(wanted, parsed.GetRequiredValue(words), parsed.GetValue(all)));
                return Task.FromResult(ExitCode.Suits);
            }
        );
        return command.WithExample(
            "lighting-calc tables",
            "lighting-calc tables lamps H4",
            "lighting-calc tables lamps BA15s --all",
            "lighting-calc tables lead-acid"
        );
    }

    private static Document Of(string name, IReadOnlyCollection<string> words, bool showsAll)
    {
        PublishedTable table = PublishedTable.Load(name).With(words);
        if (table.Rows.IsEmpty)
            throw new InputException($"the table '{name}' has no row with '{string.Join(' ', words)}'.");
        return name == TablesDocument.Lamps && !showsAll ? TablesDocument.OfLamps(table) : TablesDocument.Of(table);
    }
}
