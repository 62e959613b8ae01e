namespace Lighting.Calc;

/// <summary>One switch in one position.</summary>
/// <param name="Switch">Name of the switch.</param>
/// <param name="Position">Name of the position.</param>
public sealed record SwitchPosition(string Switch, string Position)
{
    /// <summary>Form in conditions: <c>lights=low</c>.</summary>
    public override string ToString() => $"{Switch}={Position}";
}
