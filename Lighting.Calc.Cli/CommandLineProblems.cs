using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Parsing;

namespace Lighting.Calc.Cli;

/// <summary>What is wrong with the words of a command line, each in one line with the known words that may be
/// meant.</summary>
/// <remarks>
/// The command line library takes an unknown option for a bike's path where a path can stand, and otherwise calls the
/// option and its value alike unrecognized.
/// </remarks>
internal static class CommandLineProblems
{
    /// <summary>A message for each; none when every word is understood.</summary>
    public static IReadOnlyList<string> Of(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        if (command is RootCommand && parsed.UnmatchedTokens is [var word, ..] && !IsOption(word))
            return [$"there is no command '{word}'{Offer(word, command.Subcommands.Select(c => c.Name))}"];
        // The root's own name is that of the file it was started from.
        string name = command is RootCommand ? "lighting-calc" : command.Name;
        IEnumerable<string> options = command
            .Options.Concat(parsed.RootCommandResult.Command.Options.Where(o => o.Recursive))
            .Select(o => o.Name);
        // Values of options are not meant, whatever they begin with, nor what follows two dashes.
        IEnumerable<string> words = parsed
            .CommandResult.Children.OfType<ArgumentResult>()
            .SelectMany(a => a.Tokens)
            .Select(t => t.Value)
            .Concat(parsed.UnmatchedTokens);
        IEnumerable<string> literal = parsed.Tokens.SkipWhile(t => t.Type != TokenType.DoubleDash).Select(t => t.Value);
        string[] unknown =
        [
            .. words
                .Except(literal)
                .Where(w => IsOption(w) && !Path.Exists(w))
                .Select(w => w.Split('=')[0])
                .Select(option => $"'{name}' has no option '{option}'{Offer(option, options)}"),
        ];
        // What else is wrong may only follow from these.
        return unknown.Length > 0 ? unknown : [.. parsed.Errors.Select(Worded).Distinct()];
    }

    private static string Worded(ParseError error)
    {
        if (
            error.SymbolResult is OptionResult { Tokens: [{ Value: var text }, ..], Option: var option }
            && option.GetCompletions(CompletionContext.Empty).Select(c => c.Label).ToArray() is { Length: > 0 } choices
            && !choices.Contains(text)
        )
        {
            return $"{option.Name}: '{text}' is not one of {string.Join(", ", choices)}{Offer(text, choices)}";
        }

        return error.Message.ReplaceLineEndings(" ");
    }

    private static bool IsOption(string word) =>
        word.StartsWith('-') && char.IsAsciiLetter(word.TrimStart('-').FirstOrDefault());

    private static string Offer(string word, IEnumerable<string> known)
    {
        ImmutableArray<string> near = SpellingSuggestions.Of(word, known);
        return near.IsEmpty ? "." : $"; {SpellingSuggestions.Question(near.Select(n => $"'{n}'"))}";
    }
}
