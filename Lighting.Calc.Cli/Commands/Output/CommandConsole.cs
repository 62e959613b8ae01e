namespace Lighting.Calc.Cli.Commands;

/// <summary>Where a command's result and messages go.</summary>
/// <param name="Output">Results.</param>
/// <param name="Errors">Messages.</param>
/// <param name="IsTerminal">Whether a person is looking at the results.</param>
/// <param name="ShowsProgress">Whether a person is looking at the messages.</param>
/// <param name="Input">Answers, where a command asks.</param>
internal sealed record CommandConsole(
    TextWriter Output,
    TextWriter Errors,
    bool IsTerminal,
    bool ShowsProgress,
    TextReader Input
);
