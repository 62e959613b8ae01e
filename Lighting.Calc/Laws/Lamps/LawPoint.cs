namespace Lighting.Calc;

/// <summary>Current and its slope at one voltage, in SI: what a load law hands to the solver.</summary>
/// <param name="CurrentAmperes">Current, positive from feed to return.</param>
/// <param name="SlopeSiemens">dI/dV; negative for a constant-power load.</param>
internal readonly record struct LawPoint(double CurrentAmperes, double SlopeSiemens);
