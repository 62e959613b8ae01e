namespace Lighting.Calc;

/// <summary>A lamp to be replaced and by what: one row of <c>swaps.csv</c>.</summary>
/// <param name="Lamp">Name of the fitted lamp.</param>
/// <param name="Replacement">What takes its place.</param>
public sealed record LampReplacement(string Lamp, LampSpecification Replacement)
{
    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }
}
