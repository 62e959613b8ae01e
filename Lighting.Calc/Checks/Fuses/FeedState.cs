namespace Lighting.Calc;

/// <summary>Which contacts pass current in a setting; settings with the same closed contacts share one.</summary>
/// <param name="Setting">The first setting of them.</param>
/// <param name="Closed">The closed contacts.</param>
internal sealed record FeedState(Setting Setting, ContactSet Closed);
