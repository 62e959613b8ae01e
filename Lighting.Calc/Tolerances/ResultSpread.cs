using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Distribution of a result over the sampled bikes.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed class ResultSpread<T>
    where T : struct, IQuantity
{
    internal ResultSpread() { }

    /// <summary>The result of the listed bike; null if it has none, such as a speed at which nothing is
    /// covered.</summary>
    public T? Listed { get; internal init; }

    /// <summary>5th percentile; null if that bike has no such result.</summary>
    public T? Percentile5 { get; internal init; }

    /// <summary>Median; null as for <see cref="Percentile5"/>.</summary>
    public T? Median { get; internal init; }

    /// <summary>95th percentile; null as for <see cref="Percentile5"/>.</summary>
    public T? Percentile95 { get; internal init; }

    /// <summary>Mean; null where some bikes have no such result.</summary>
    public T? Mean { get; internal init; }

    /// <summary>Standard deviation; null where some bikes have no such result.</summary>
    public T? StandardDeviation { get; internal init; }

    /// <summary>
    /// The parts' shares of the variance, the greatest first, parts without one left out; empty where nothing varies or
    /// some bikes have no such result. See <see cref="ToleranceCheck"/> for the method and its limits.
    /// </summary>
    internal ImmutableArray<VarianceShare> Shares { get; init; }

    /// <summary>Remainder of the variance: non-linear effects and interactions.</summary>
    public Ratio Unexplained =>
        Ratio.FromDecimalFractions(Shares.IsEmpty ? 0 : Math.Max(0, 1 - Shares.Sum(s => s.Share.DecimalFractions)));

    /// <summary>The part with the largest share; null if nothing varies.</summary>
    internal VarianceShare? MattersMost => Shares.IsEmpty ? null : Shares[0];
}
