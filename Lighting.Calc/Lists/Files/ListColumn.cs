namespace Lighting.Calc;

/// <summary>A column a list may have.</summary>
internal sealed record ListColumn(string Name, bool Required = false);
