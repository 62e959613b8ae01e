namespace Lighting.Calc;

/// <summary>One way to write a unit, and how a number in it becomes a number in the bare unit.</summary>
internal sealed record UnitWord(string Word, Func<double, double> ToBare, bool Shown);
