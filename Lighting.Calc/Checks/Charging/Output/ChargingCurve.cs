using System.Collections.Immutable;
using System.Globalization;
using MathNet.Numerics.Interpolation;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Output of one winding over engine speed: the points of the charging list that share a condition.</summary>
/// <remarks>
/// Between points: monotone piecewise cubic (Fritsch and Carlson, "Monotone Piecewise Cubic Interpolation", SIAM J.
/// Numer. Anal. 17, 1980), so that the curve never leaves the span of its two neighbours; a straight line between
/// two points. Engine standing: zero. Below a first point of zero amps: zero, the machine has not cut in. Below a
/// first point above zero amps, and above the last point: not known.
/// </remarks>
internal sealed class ChargingCurve
{
    private readonly IInterpolation? _interpolation;
    private readonly double[] _rpm;
    private readonly double[] _amperes;

    private ChargingCurve(Condition when, ImmutableArray<ChargingPoint> points)
    {
        When = when;
        Points = points;
        _rpm = [.. points.Select(p => p.Speed.RevolutionsPerMinute)];
        _amperes = [.. points.Select(p => p.Current.Amperes)];
        _interpolation = _rpm.Length switch
        {
            1 => null,
            2 => LinearSpline.InterpolateSorted(_rpm, _amperes),
            _ => CubicSpline.InterpolatePchipSorted(_rpm, _amperes),
        };
    }

    /// <summary>The settings in which this winding works.</summary>
    public Condition When { get; }

    /// <summary>Its points, slowest first; one or more.</summary>
    public ImmutableArray<ChargingPoint> Points { get; }

    /// <summary>Whether it falls somewhere as the engine speeds up, which few machines do.</summary>
    internal bool Falls => Enumerable.Range(1, _rpm.Length - 1).Any(i => _amperes[i] < _amperes[i - 1]);

    internal double FirstRpm => _rpm[0];

    internal double LastRpm => _rpm[^1];

    /// <summary>Lowest rpm at which the output is known: all the way down when the curve begins with zero
    /// amps.</summary>
    internal double LowestKnownRpm => _amperes[0] == 0 ? 0 : FirstRpm;

    internal IEnumerable<double> KnotsRpm => _rpm;

    /// <summary>The curves of a charging list, in the order their conditions first appear.</summary>
    public static ImmutableArray<ChargingCurve> Of(IEnumerable<ChargingPoint> points)
    {
        var curves = ImmutableArray.CreateBuilder<ChargingCurve>();
        foreach (IGrouping<Condition, ChargingPoint> group in points.GroupBy(p => p.When))
        {
            ImmutableArray<ChargingPoint> sorted = [.. group.OrderBy(p => p.Speed.RevolutionsPerMinute)];
            foreach (ChargingPoint point in sorted)
                if (!(point.Speed.RevolutionsPerMinute >= 0 && point.Current.Amperes >= 0))
                    throw new ArgumentException(
                        $"A charging point has zero or more rpm and amps; one has {Rpm(point)} rpm and "
                            + $"{point.Current.Amperes.ToString(CultureInfo.InvariantCulture)} A.",
                        nameof(points)
                    );
            for (int i = 1; i < sorted.Length; i++)
                if (Math.Abs(sorted[i].Speed.RevolutionsPerMinute - sorted[i - 1].Speed.RevolutionsPerMinute) < 1e-6)
                    throw new ArgumentException(
                        $"The charging list has {Rpm(sorted[i])} rpm twice "
                            + $"{(group.Key.Terms.IsEmpty ? "without a condition" : $"when {group.Key}")}.",
                        nameof(points)
                    );
            curves.Add(new ChargingCurve(group.Key, sorted));
        }

        return curves.ToImmutable();
    }

    /// <summary>Its output at an engine speed.</summary>
    /// <param name="speed">Engine speed, zero or more; below zero counts as below the first point.</param>
    public ChargingOutput OutputAt(RotationalSpeed speed)
    {
        double rpm = speed.RevolutionsPerMinute;
        OutputRange range = RangeOf(rpm);
        return new ChargingOutput(
            range,
            AmperesAt(rpm, range) is { } amperes ? ElectricCurrent.FromAmperes(amperes) : null
        );
    }

    internal OutputRange RangeOf(double rpm) =>
        rpm switch
        {
            0 => OutputRange.Standing,
            _ when rpm < FirstRpm => _amperes[0] == 0 ? OutputRange.BelowCutIn : OutputRange.BelowCurve,
            _ when rpm > LastRpm => OutputRange.AboveCurve,
            _ => OutputRange.OnCurve,
        };

    internal double? AmperesAt(double rpm, OutputRange range) =>
        range switch
        {
            OutputRange.OnCurve => _interpolation is null ? _amperes[0] : Math.Max(0, _interpolation.Interpolate(rpm)),
            OutputRange.Standing or OutputRange.BelowCutIn => 0,
            _ => null,
        };

    /// <summary>Its current at a speed; beyond the last point that of the point, below the first one on the
    /// straight line through the
    /// first two.</summary>
    internal double AmperesNear(double rpm)
    {
        if (rpm >= LastRpm)
            return _amperes[^1];
        if (rpm >= FirstRpm)
            return Math.Max(0, _interpolation!.Interpolate(rpm));
        if (_amperes.Length == 1)
            return _amperes[0];
        double slope = Math.Max(0, (_amperes[1] - _amperes[0]) / (_rpm[1] - _rpm[0]));
        return Math.Max(0, _amperes[0] - slope * (FirstRpm - rpm));
    }

    private static string Rpm(ChargingPoint point) =>
        point.Speed.RevolutionsPerMinute.ToString("0.###", CultureInfo.InvariantCulture);
}
