// Diagnostics of a solution.
using System.Globalization;

namespace Lighting.Calc;

/// <param name="Tried">Methods used, in the order of the enumeration.</param>
/// <param name="Iterations">Linear systems solved in all.</param>
/// <param name="WorstNode">Node whose Kirchhoff residual is the greatest share of what it may be; −1 when no current
/// flows.</param>
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
)
{
    /// <summary>What the residual at the worst node may be.</summary>
    public double AllowedAmperes { get; init; }

    /// <summary>Whether an ideal source has its voltage.</summary>
    public bool HasSourceVoltage { get; init; }

    /// <summary>Whether the point passes every test: source, Kirchhoff, power balance and stability.</summary>
    public bool IsAccepted => HasSourceVoltage && HasBalancedCurrents && HasBalancedPower && Holdable;

    private bool HasBalancedCurrents => WorstResidualAmperes <= AllowedAmperes;

    private bool HasBalancedPower => PowerImbalance <= SolverLimits.PowerRelative;

    /// <summary>Why the point was refused: each test that failed, with its figure and its limit.</summary>
    public string Refusal(string worstPoint)
    {
        List<string> failed = [];
        if (!HasSourceVoltage)
            failed.Add("the source has not its voltage");
        if (!HasBalancedCurrents)
            failed.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{WorstResidualAmperes:G3} A are left over at {worstPoint} (limit {AllowedAmperes:G3} A)"
                )
            );
        if (!HasBalancedPower)
            failed.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the power differs by {PowerImbalance:G3} of it (limit {SolverLimits.PowerRelative:G3})"
                )
            );
        if (!Holdable)
            failed.Add("the operating point is not stable");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{string.Join(", ", failed)}; {Iterations} iterations, tried {Tried}."
        );
    }
}
