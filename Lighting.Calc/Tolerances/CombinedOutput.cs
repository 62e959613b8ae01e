using System.Collections.Immutable;
using MathNet.Numerics.RootFinding;

namespace Lighting.Calc;

/// <summary>The curves that work together in some settings, and the engine speed at which they first give a current. For one thread.</summary>
/// <remarks>As <see cref="ChargingSystem"/> finds it: the spans between the curves' points in eight pieces each, the first crossing by Brent's method.</remarks>
internal sealed class CombinedOutput
{
    private const int PiecesBetweenPoints = 8;

    private readonly ImmutableArray<ChargingCurve> _curves;
    private readonly double[] _rpm = [];
    private readonly double[] _mostSoFar = [];
    private readonly Func<double, double> _surplus;
    private double _wanted;

    public CombinedOutput(ImmutableArray<ChargingCurve> curves)
    {
        _curves = curves;
        _surplus = rpm => Amperes(rpm) - _wanted;
        if (curves.IsEmpty)
            return;
        double low = curves.Max(c => c.LowestKnownRpm), high = curves.Min(c => c.LastRpm);
        IsKnown = low <= high;
        if (!IsKnown)
            return;
        double[] knots = [low, .. curves.SelectMany(c => c.KnotsRpm).Where(n => n > low && n < high).Distinct().Order(), high];
        _rpm = [low, .. Enumerable.Range(1, knots.Length - 1).SelectMany(i => Enumerable.Range(1, PiecesBetweenPoints).Select(p =>
            p == PiecesBetweenPoints ? knots[i] : knots[i - 1] + (knots[i] - knots[i - 1]) * p / PiecesBetweenPoints))];
        _mostSoFar = new double[_rpm.Length];
        for (int i = 0; i < _rpm.Length; i++)
            _mostSoFar[i] = Math.Max(i == 0 ? 0 : _mostSoFar[i - 1], Amperes(_rpm[i]));
    }

    /// <summary>Whether the curves share any speeds; also false without a curve.</summary>
    public bool IsKnown { get; }

    /// <summary>Whether no winding works.</summary>
    public bool IsEmpty => _curves.IsEmpty;

    /// <summary>Lowest speed at which a current above zero is given: the first speed known where it is given already there, infinity where it is given nowhere.</summary>
    public double RpmFor(double amperes)
    {
        int i = Array.BinarySearch(_mostSoFar, amperes);
        if (i < 0)
            i = ~i;
        while (i > 0 && _mostSoFar[i - 1] >= amperes)
            i--;
        if (i == 0 && _rpm.Length > 0)
            return _rpm[0];
        if (i >= _rpm.Length)
            return double.PositiveInfinity;
        _wanted = amperes;
        return _surplus(_rpm[i]) == 0 ? _rpm[i] : Brent.FindRoot(_surplus, _rpm[i - 1], _rpm[i], 1e-9, 200);
    }

    private double Amperes(double rpm)
    {
        double sum = 0;
        foreach (ChargingCurve curve in _curves)
            sum += curve.AmperesAt(rpm, curve.RangeOf(rpm)) ?? throw new InvalidOperationException($"{rpm} rpm is not on the curve.");
        return sum;
    }
}
