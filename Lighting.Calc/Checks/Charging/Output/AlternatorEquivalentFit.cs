using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using MathNet.Numerics.Optimization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A coil fitted to amps that were measured at fixed terminal voltage over engine speed.</summary>
/// <remarks>
/// With K = k² and Λ = l² of <see cref="AlternatorEquivalent"/>, (V + I·R)²/n² = K − Λ·I² is a straight line in I²: its
/// regression, for the R under which it is straightest, is the start, from which the parameters are moved to the least
/// squares of the amps (K. Levenberg, Quarterly of Applied Mathematics 2, 1944; D. W. Marquardt, J. SIAM 11, 1963).
/// Behind a rectifier into a battery the same equation holds for the fundamental wave, with the voltage of the battery
/// and of the bridge as V and with k, l and R in units of the direct-current side.
/// </remarks>
/// <param name="When">The settings in which the winding works.</param>
/// <param name="Source">The fitted coil.</param>
/// <param name="TerminalVoltage">Voltage at which the amps were measured, and for which the coil gives them.</param>
/// <param name="Residuals">What is left at each point.</param>
internal sealed record AlternatorEquivalentFit(
    Condition When,
    AlternatorEquivalent Source,
    ElectricPotential TerminalVoltage,
    ImmutableArray<FitResidual> Residuals
)
{
    /// <summary>Share of the points' squared amps above which what a fit leaves is worth another look.</summary>
    private const double PoorShare = 1e-6;

    private const int SimplexRounds = 5;

    /// <summary>Bound of the logarithms of volts and ohms, e³⁰ either way: no coil is beyond.</summary>
    private const double MostOfLogarithm = 30;

    /// <summary>Fits a coil to a curve's points; a point at standstill tells nothing and is left out.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="terminalVoltage">Voltage at which its amps were measured, above zero.</param>
    /// <param name="coilResistance">Resistance of the coil, zero or more; null where it is not known: then it is fitted
    /// to three or more points, and zero for two.</param>
    /// <param name="fit">The fit; null where there is none.</param>
    /// <param name="reason">Why there is none; null where there is one.</param>
    /// <returns>Whether the points fix a coil.</returns>
    public static bool TryFit(
        ChargingCurve curve,
        ElectricPotential terminalVoltage,
        ElectricResistance? coilResistance,
        [NotNullWhen(true)] out AlternatorEquivalentFit? fit,
        [NotNullWhen(false)] out string? reason
    )
    {
        if (!(terminalVoltage.Volts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(terminalVoltage),
                terminalVoltage,
                "Terminal voltage must be greater than zero."
            );
        if (coilResistance is { Ohms: < 0 })
            throw new ArgumentOutOfRangeException(
                nameof(coilResistance),
                coilResistance,
                "Coil resistance must be zero or more."
            );
        fit = null;
        ImmutableArray<ChargingPoint> points = [.. curve.Points.Where(p => p.Speed.RevolutionsPerMinute > 0)];
        double volts = terminalVoltage.Volts;
        double[] speeds = [.. points.Select(p => p.Speed.RevolutionsPerMinute)],
            amperes = [.. points.Select(p => p.Current.Amperes)],
            squares = [.. amperes.Select(i => i * i)];
        if (squares.Distinct().Count() < 2)
        {
            reason = "a coil is fitted to two or more points of different amps above zero rpm";
            return false;
        }

        bool fitsResistance = coilResistance is null && points.Length > 2;
        // Resistances up to a few times what the first point could stand; a grid is enough for a start.
        double unit = volts / points.Max(p => p.Current.Amperes);
        double[] candidates = fitsResistance
            ? [.. Enumerable.Range(0, 61).Select(i => unit * i / 20)]
            : [coilResistance?.Ohms ?? 0];
        (double Ohms, Vector<double> Start)[] possible =
        [
            .. candidates
                .Select(o => (Ohms: o, Line: Line(o)))
                .Where(c => c.Line is { A: > 0, B: < 0 })
                .Select(c => (c.Ohms, Start(c.Line.A, c.Line.B))),
        ];
        if (possible.Length == 0)
        {
            reason = coilResistance is { } known
                ? $"no coil of {known.Ohms.ToString(CultureInfo.InvariantCulture)} Ω gives them: the amps fall as the "
                    + $"speed grows, or grow faster than an EMF in proportion to the speed drives through that "
                    + $"resistance"
                : "no coil gives them: the amps fall as the speed grows";
            return false;
        }

        // ln k, ln l and, where it is fitted, R by its square root, so that none can fall below zero.
        (double startOhms, Vector<double> start) = possible.MinBy(c => SquareError(Coil(c.Start, c.Ohms)));
        if (fitsResistance)
            start = Vector<double>.Build.Dense([start[0], start[1], Math.Sqrt(Math.Max(startOhms, unit / 100) / unit)]);
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(
            (v, rpm) =>
            {
                AlternatorEquivalent coil = Of(v);
                return rpm.Map(n => Amperes(coil, n));
            },
            Vector<double>.Build.Dense(speeds),
            Vector<double>.Build.Dense(amperes)
        );
        Vector<double> best = new LevenbergMarquardtMinimizer(
            gradientTolerance: 1e-14,
            stepTolerance: 1e-14,
            functionTolerance: 1e-28,
            maximumIterations: 1000
        )
            .FindMinimum(objective, start)
            .MinimizingPoint;
        // Where a point lies below cut-in the error has a kink, at which steps by slopes stop short; a simplex goes on
        // from there.
        if (SquareError(Of(best)) > PoorShare * squares.Sum())
            best = Lower(best);
        AlternatorEquivalent source = Of(best);
        fit = new AlternatorEquivalentFit(
            When: curve.When,
            Source: source,
            TerminalVoltage: terminalVoltage,
            Residuals:
            [
                .. points.Select(p => new FitResidual(
                    p,
                    ElectricCurrent.FromAmperes(
                        p.Current.Amperes - Amperes(source, p.Speed.RevolutionsPerMinute)
                    )
                )),
            ]
        );
        reason = null;
        return true;

        Vector<double> Lower(Vector<double> from)
        {
            IObjectiveFunction error = ObjectiveFunction.Value(v =>
                v.AbsoluteMaximum() < MostOfLogarithm ? SquareError(Of(v)) : double.MaxValue
            );
            for (int round = 0; round < SimplexRounds; round++)
            {
                Vector<double> lower = NelderMeadSimplex
                    .Minimum(error, from, from.Map(_ => 0.1), 1e-12, 10_000)
                    .MinimizingPoint;
                if (!(SquareError(Of(lower)) < SquareError(Of(from)) - 1e-12))
                    return from;
                from = lower;
            }

            return from;
        }

        (double A, double B) Line(double ohms) =>
            SimpleRegression.Fit(
                squares,
                [.. amperes.Zip(speeds, (i, n) => Math.Pow((volts + i * ohms) / n, 2))]
            );

        static Vector<double> Start(double a, double b) =>
            Vector<double>.Build.Dense([Math.Log(a) / 2, Math.Log(-b) / 2]);

        AlternatorEquivalent Of(Vector<double> v) => Coil(v, fitsResistance ? unit * v[2] * v[2] : startOhms);

        static AlternatorEquivalent Coil(Vector<double> logs, double ohms) =>
            new(
                RotationalSpeed.FromRevolutionsPerMinute(1),
                ElectricPotential.FromVolts(Math.Exp(logs[0])),
                ElectricResistance.FromOhms(Math.Exp(logs[1])),
                ElectricResistance.FromOhms(ohms)
            );

        double SquareError(AlternatorEquivalent coil) =>
            amperes.Zip(speeds, (i, n) => Math.Pow(i - Amperes(coil, n), 2)).Sum();

        // Below the speed at which the EMF reaches the terminal voltage the coil gives nothing.
        double Amperes(AlternatorEquivalent coil, double rpm) => coil.AmperesAt(rpm, volts) ?? 0;
    }
}
