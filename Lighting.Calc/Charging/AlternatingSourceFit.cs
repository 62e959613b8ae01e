using System.Collections.Immutable;
using System.Globalization;
using Lighting.Calc.Harness;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using MathNet.Numerics.Optimization;
using UnitsNet;

namespace Lighting.Calc.Charging;

/// <summary>A lighting coil fitted to amps that were measured at fixed terminal volts over engine speed.</summary>
/// <remarks>
/// With K = k² and Λ = l² of <see cref="AlternatingSource"/>, (V + I·R)²/n² = K − Λ·I² is a straight line in I²: its
/// regression is the start, from which ln k and ln l are moved to the least squares of the amps (Nelder and Mead).
/// </remarks>
public sealed record AlternatingSourceFit
{
    private AlternatingSourceFit()
    {
    }

    /// <summary>The fitted coil.</summary>
    public required AlternatingSource Source { get; init; }

    /// <summary>What is left at each point.</summary>
    public required ImmutableArray<FitResidual> Residuals { get; init; }

    /// <summary>Fits a coil to a curve's points; a point at standstill tells nothing and is left out.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="terminalVoltage">Volts (rms) at which its amps were measured, above zero.</param>
    /// <param name="coilResistance">Resistance of the coil, zero or more; zero where it is not known.</param>
    /// <param name="fit">The fit, or null.</param>
    /// <param name="reason">Why there is none, or null.</param>
    /// <returns>Whether the points fix a coil.</returns>
    public static bool TryFit(ChargingCurve curve, ElectricPotential terminalVoltage, ElectricResistance coilResistance, out AlternatingSourceFit? fit, out string? reason)
    {
        fit = null;
        ImmutableArray<ChargingPoint> points = [.. curve.Points.Where(p => p.Speed.RevolutionsPerMinute > 0)];
        double volts = terminalVoltage.Volts, ohms = coilResistance.Ohms;
        double[] squares = [.. points.Select(p => p.Current.Amperes * p.Current.Amperes)];
        if (squares.Distinct().Count() < 2)
        {
            reason = "a lighting coil is fitted to two or more points of different amps above zero rpm";
            return false;
        }

        (double intercept, double slope) = SimpleRegression.Fit(squares, [.. points.Select(p => Math.Pow((volts + p.Current.Amperes * ohms) / p.Speed.RevolutionsPerMinute, 2))]);
        if (!(intercept > 0 && slope < 0))
        {
            reason = $"no coil of {ohms.ToString(CultureInfo.InvariantCulture)} Ω gives them: the amps fall as the speed grows, or grow faster than an EMF in proportion to the speed drives through that resistance";
            return false;
        }

        IObjectiveFunction squareError = ObjectiveFunction.Value(logs => points.Sum(p => Math.Pow(Error(Coil(logs), p), 2)));
        var start = Vector<double>.Build.Dense([Math.Log(intercept) / 2, Math.Log(-slope) / 2]);
        AlternatingSource source = Coil(new NelderMeadSimplex(1e-14, 5000).FindMinimum(squareError, start).MinimizingPoint);
        fit = new AlternatingSourceFit
        {
            Source = source,
            Residuals = [.. points.Select(p => new FitResidual(p, ElectricCurrent.FromAmperes(p.Current.Amperes - Error(source, p)), ElectricCurrent.FromAmperes(Error(source, p))))],
        };
        reason = null;
        return true;

        AlternatingSource Coil(Vector<double> logs) =>
            new(RotationalSpeed.FromRevolutionsPerMinute(1), ElectricPotential.FromVolts(Math.Exp(logs[0])), ElectricResistance.FromOhms(Math.Exp(logs[1])), coilResistance);

        // Below the speed at which the EMF reaches the terminal volts the coil gives nothing.
        double Error(AlternatingSource coil, ChargingPoint point) => point.Current.Amperes - (coil.CurrentAt(point.Speed, terminalVoltage)?.Amperes ?? 0);
    }
}
