// What was tried on the way to a solution, for the diagnosis of one that failed.
namespace Lighting.Calc;

[Flags]
internal enum SolveStages
{
    None = 0,

    /// <summary>Newton's method from full source voltage or, on a warm start, from the last solution.</summary>
    Newton = 1,

    /// <summary>The guarded descent from the no-load voltage.</summary>
    Descent = 2,
}
