namespace Lighting.Calc;

/// <summary>One end of a part that moves to the fuse box.</summary>
/// <param name="Part">Name of the run, contact or load.</param>
/// <param name="From">The point it was connected to.</param>
/// <param name="To">The point it is connected to with the plan.</param>
public sealed record MovedEnd(string Part, string From, string To);
