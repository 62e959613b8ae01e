namespace Lighting.Calc.Cli.Commands;

/// <summary>Where a command's result and messages go.</summary>
/// <param name="Output">Results.</param>
/// <param name="Errors">Messages.</param>
/// <param name="IsTerminal">Whether a person is looking at the results.</param>
/// <param name="ShowsProgress">Whether a person is looking at the messages.</param>
/// <param name="Input">Opens what is read where a bike is given as <c>-</c>.</param>
internal sealed record CommandConsole(
    TextWriter Output,
    TextWriter Errors,
    bool IsTerminal,
    bool ShowsProgress,
    Func<Stream> Input
)
{
    /// <summary>What answers are read from, typed or piped.</summary>
    public TextReader Answers { get; init; } = TextReader.Null;

    /// <summary>Whether a person is there to be asked for what the options leave open.</summary>
    public bool Asks { get; init; }
}
