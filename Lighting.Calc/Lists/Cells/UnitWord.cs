namespace Lighting.Calc;

/// <summary>One spelling of a unit and its conversion to the bare unit.</summary>
internal sealed record UnitWord(string Word, Func<double, double> ToBare, bool Shown);
