namespace Lighting.Calc;

/// <summary>How a swap is judged.</summary>
public sealed record SwapOptions
{
    /// <summary>How both bikes are checked: the settings, the supply, fuses and charging.</summary>
    public CheckOptions Check { get; init; } = new();
}
