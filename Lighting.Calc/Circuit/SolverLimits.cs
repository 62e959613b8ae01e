// All tolerances and iteration limits of the solver in one place.
namespace Lighting.Calc;

internal static class SolverLimits
{
    /// <summary>Greatest Kirchhoff residual of an accepted solution, at any node.</summary>
    public const double ResidualAmperes = 1e-9;

    /// <summary>
    /// The same limit relative to the currents that meet in a node: above some 100 kA the rounding of the currents
    /// themselves is more than <see cref="ResidualAmperes"/>.
    /// </summary>
    public const double ResidualRelative = 4e-15;

    /// <summary>Greatest |power in − power out| over power in of an accepted solution.</summary>
    public const double PowerRelative = 1e-9;

    /// <summary>Power in below which the balance counts as if it were this much: a single blocked LED leaks far
    /// more.</summary>
    public const double NoPowerWatts = 1e-12;

    /// <summary>The residual aimed at; iteration goes on while it improves and this is not reached.</summary>
    public const double TargetAmperes = 1e-10;

    /// <summary>Difference of a load's current from its tangent at which Newton's method has arrived.</summary>
    public const double TangentAmperes = 1e-11;

    public const int NewtonIterations = 12;
    public const int DescentIterations = 400;
    public const int PolishIterations = 10;
}
