// Diagnostics of a solution.
namespace Lighting.Calc;

/// <param name="Tried">Methods used, in the order of the enumeration.</param>
/// <param name="Iterations">Linear systems solved in all.</param>
/// <param name="WorstNode">Node with the greatest Kirchhoff residual; −1 when no current flows.</param>
/// <param name="WorstResidualAmperes">That residual.</param>
/// <param name="PowerImbalance">|power in − power out| over power in.</param>
/// <param name="Holdable">Whether all pivots of the Jacobian were positive.</param>
internal readonly record struct SolveDiagnostics(
    SolveStages Tried,
    int Iterations,
    int WorstNode,
    double WorstResidualAmperes,
    double PowerImbalance,
    bool Holdable
);
