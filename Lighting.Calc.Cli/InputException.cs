namespace Lighting.Calc.Cli;

/// <summary>The input is wrong; each message is one thing to put right.</summary>
internal sealed class InputException(IReadOnlyList<string> messages) : Exception(string.Join('\n', messages))
{
    public InputException(string message)
        : this([message])
    {
    }

    public IReadOnlyList<string> Messages { get; } = messages;
}
