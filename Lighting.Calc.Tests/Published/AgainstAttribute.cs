namespace Lighting.Calc.Tests.Published;

/// <summary>Which model a published check holds against which source, and what that proves: a row of the table of
/// accuracies in Lighting.Calc/MODELS.md.</summary>
/// <param name="model">The model.</param>
/// <param name="source">The publication up to the first comma, then where in it; <c>from memory</c> where nobody could
/// confirm the figures.</param>
/// <param name="kind">What the check proves.</param>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class AgainstAttribute(string model, string source, CheckKind kind) : Attribute
{
    public string Model { get; } = model;

    public string Source { get; } = source;

    public CheckKind Kind { get; } = kind;

    /// <summary>Why every figure of a model may be met to the last digit, which otherwise means that it was
    /// copied.</summary>
    public string? Exact { get; init; }

    public string Publication => Source.Split(',')[0].Trim();
}
