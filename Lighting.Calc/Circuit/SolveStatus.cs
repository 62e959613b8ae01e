// How a solution ended.
namespace Lighting.Calc;

internal enum SolveStatus
{
    /// <summary>A stable operating point, within <see cref="SolverLimits"/>.</summary>
    Solved,

    /// <summary>An ideal source with its two ends joined without resistance: no finite current exists.</summary>
    DeadShort,

    /// <summary>No point within the limits was reached; no number of this solution may be used.</summary>
    NotConverged,
}
