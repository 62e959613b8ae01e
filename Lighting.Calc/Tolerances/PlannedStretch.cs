namespace Lighting.Calc;

/// <summary>A stretch of a ride, made ready.</summary>
/// <param name="State">Its electrical state; −1 when nothing is on.</param>
/// <param name="Stands">Whether the engine stands.</param>
/// <param name="OutputAmperes">Listed output at its speed.</param>
/// <param name="Hours">How long it takes.</param>
internal readonly record struct PlannedStretch(int State, bool Stands, double OutputAmperes, double Hours);
