using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using MathNet.Numerics.Optimization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A permanent-magnet machine fitted to measured points by least squares of the amps.</summary>
/// <remarks>
/// The formula is that of <see cref="PermanentMagnetAlternator"/>. For any n0 the best Imax is Σ I·s / Σ s², s = x/√(1
/// + x²) (derived), so that only ln n0 is searched: first on a grid, then by golden section. A best n0 more than 30
/// times beyond the points means that the points show no levelling off (or nothing but it), and is refused.
/// </remarks>
/// <param name="When">The settings in which the winding works.</param>
/// <param name="Machine">The fitted machine.</param>
/// <param name="Residuals">What is left at each point.</param>
internal sealed record PermanentMagnetFit(
    Condition When,
    PermanentMagnetAlternator Machine,
    ImmutableArray<FitResidual> Residuals
)
{
    /// <summary>How far beyond the slowest and fastest point n0 is searched, as a factor.</summary>
    private const double SearchSpan = 30;

    /// <summary>Fits a machine to a curve's points. A point at standstill tells nothing and is left out.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="fit">The fit; null where there is none.</param>
    /// <param name="reason">Why there is none; null where there is one.</param>
    /// <returns>Whether the points fix a machine.</returns>
    public static bool TryFit(
        ChargingCurve curve,
        [NotNullWhen(true)] out PermanentMagnetFit? fit,
        [NotNullWhen(false)] out string? reason
    )
    {
        fit = null;
        ImmutableArray<ChargingPoint> points = [.. curve.Points.Where(p => p.Speed.RevolutionsPerMinute > 0)];
        if (points.Count(p => p.Current.Amperes > 0) < 2)
        {
            reason = "a machine is fitted to two or more points above zero rpm and zero amps";
            return false;
        }

        double[] rpm = [.. points.Select(p => p.Speed.RevolutionsPerMinute)];
        double[] amperes = [.. points.Select(p => p.Current.Amperes)];
        double low = Math.Log(rpm[0] / SearchSpan),
            high = Math.Log(rpm[^1] * SearchSpan);
        const int steps = 200;
        double step = (high - low) / steps;
        double best = Enumerable.Range(0, steps + 1).Select(i => low + i * step).MinBy(SquareError);
        if (best <= low + step || best >= high - step)
        {
            reason =
                best >= high - step
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $"the output grows in proportion to the speed or faster up to {rpm[^1]:0} rpm, so that the "
                            + $"current it levels off at is not in the points; a list with a cut-in wants the coil "
                            + $"model"
                    )
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"the output does not grow from {rpm[0]:0} rpm on, so that the speed at which it rises is not "
                            + $"in the points"
                    );
            return false;
        }

        double corner = GoldenSectionMinimizer
            .Minimum(ObjectiveFunction.ScalarValue(SquareError), best - step, best + step, 1e-10, 1000)
            .MinimizingPoint;
        var machine = new PermanentMagnetAlternator(
            ElectricCurrent.FromAmperes(BestMaximum(corner)),
            RotationalSpeed.FromRevolutionsPerMinute(Math.Exp(corner))
        );
        ImmutableArray<FitResidual> residuals =
        [
            .. points.Select(p => new FitResidual(p, p.Current - machine.OutputAt(p.Speed))),
        ];
        fit = new PermanentMagnetFit(
            When: curve.When,
            Machine: machine,
            Residuals: residuals
        );
        reason = null;
        return true;

        double BestMaximum(double logCorner)
        {
            double product = 0,
                square = 0;
            for (int i = 0; i < rpm.Length; i++)
            {
                double shape = PermanentMagnetAlternator.Shape(rpm[i] / Math.Exp(logCorner));
                product += amperes[i] * shape;
                square += shape * shape;
            }

            return product / square;
        }

        double SquareError(double logCorner)
        {
            double maximum = BestMaximum(logCorner),
                sum = 0;
            for (int i = 0; i < rpm.Length; i++)
            {
                double error = amperes[i] - maximum * PermanentMagnetAlternator.Shape(rpm[i] / Math.Exp(logCorner));
                sum += error * error;
            }

            return sum;
        }
    }
}
