namespace Lighting.Calc;

/// <summary>One switch standing in one position.</summary>
/// <param name="Switch">Name of the switch.</param>
/// <param name="Position">Name of the position.</param>
public sealed record SwitchPosition(string Switch, string Position)
{
    /// <summary>The form conditions use: <c>lights=low</c>.</summary>
    public override string ToString() => $"{Switch}={Position}";
}
