namespace Lighting.Calc.Tests.Published;

/// <summary>Which model a published check holds against which source: a row of the table of accuracies in
/// Lighting.Calc/MODELS.md.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class AgainstAttribute(string model, string source) : Attribute
{
    public string Model { get; } = model;

    /// <summary>The publication, and <c>from memory</c> where nobody could confirm the figures.</summary>
    public string Source { get; } = source;

    /// <summary>Whether the library reads the source's own figures, so that the check is of the copy and not of a
    /// formula.</summary>
    public bool Copied { get; init; }
}
