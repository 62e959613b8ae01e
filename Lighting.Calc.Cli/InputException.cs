namespace Lighting.Calc.Cli;

/// <summary>The input is wrong; each message is one thing to put right.</summary>
/// <param name="messages">Put into words as they are printed: a long list can have tens of thousands.</param>
internal sealed class InputException(IEnumerable<string> messages) : Exception("The input is wrong.")
{
    public InputException(string message)
        : this([message]) { }

    public InputException(IReadOnlyList<ListFault> faults)
        : this(faults.Select(f => string.Join("\n  ", [f.Message, .. f.Rows]))) => Faults = faults;

    /// <summary>The faults of lists, in their order; empty where options are wrong.</summary>
    public IReadOnlyList<ListFault> Faults { get; } = [];

    /// <summary>Whether not the input is wrong, but where the result is to go.</summary>
    public bool IsOfOutput { get; init; }

    public IEnumerable<string> Messages { get; } = messages;
}
