// All tolerances and iteration limits of the solver in one place.
namespace Lighting.Calc;

internal static class SolverLimits
{
    /// <summary>Greatest Kirchhoff residual of an accepted solution, at any node.</summary>
    public const double ResidualAmperes = 1e-9;

    /// <summary>The same limit relative to the currents that meet in the node, where these are under a milliampere: a
    /// nanoampere is nothing beside a lamp and everything beside a blocked LED.</summary>
    public const double ResidualOfMeeting = 1e-6;

    /// <summary>
    /// What may be left in any case, relative to the greatest current of the circuit: above some 100 kA the rounding of
    /// the currents themselves is more than <see cref="ResidualAmperes"/>.
    /// </summary>
    public const double ResidualRelative = 4e-15;

    /// <summary>Greatest |power in − power out| over power in of an accepted solution.</summary>
    public const double PowerRelative = 1e-9;

    /// <summary>What rounding takes of a voltage kept to twice the digits of a number: across a nanoohm at kilovolts
    /// that is more than <see cref="NoAmperes"/>.</summary>
    public const double VoltsRelative = 4.0 / (1L << 53) / (1L << 53);

    /// <summary>No current at all: less than one electron in ten seconds.</summary>
    public const double NoAmperes = 1e-20;

    /// <summary>No power at all, likewise.</summary>
    public const double NoPowerWatts = 1e-90;

    /// <summary>The share of each limit that is aimed at; iteration goes on while it improves and this is not
    /// reached.</summary>
    public const double TargetShare = 0.1;

    /// <summary>Difference of a load's current from its tangent at which Newton's method has arrived.</summary>
    public const double TangentAmperes = 1e-11;

    public const int NewtonIterations = 12;
    public const int DescentIterations = 400;
    public const int PolishIterations = 10;
}
