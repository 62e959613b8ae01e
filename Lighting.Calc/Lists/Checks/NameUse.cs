namespace Lighting.Calc;

/// <summary>One place where something is named.</summary>
/// <param name="Text">The name.</param>
/// <param name="Row">The row; null if the name does not come from a list.</param>
/// <param name="Column">The column.</param>
internal readonly record struct NameUse(string Text, ListRow? Row, string Column);
