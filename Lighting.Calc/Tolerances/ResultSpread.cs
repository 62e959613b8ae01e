using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How a result spreads over the bikes drawn.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed class ResultSpread<T>
    where T : struct, IQuantity
{
    internal ResultSpread()
    {
    }

    /// <summary>The result of the listed bike; null where it has none, such as a speed at which nothing is covered.</summary>
    public T? Listed { get; internal init; }

    /// <summary>Five in a hundred bikes lie at or under this; null where that bike has no such result.</summary>
    public T? Percentile5 { get; internal init; }

    /// <summary>Half of the bikes lie at or under this; null as for <see cref="Percentile5"/>.</summary>
    public T? Median { get; internal init; }

    /// <summary>Ninety-five in a hundred bikes lie at or under this; null as for <see cref="Percentile5"/>.</summary>
    public T? Percentile95 { get; internal init; }

    /// <summary>Mean; null where some bikes have no such result.</summary>
    public T? Mean { get; internal init; }

    /// <summary>Standard deviation; null where some bikes have no such result.</summary>
    public T? StandardDeviation { get; internal init; }

    /// <summary>
    /// The parts' shares of the variance, the greatest first, parts without one left out; empty where nothing varies or some
    /// bikes have no such result. See <see cref="ToleranceCheck"/> for the method and its limits.
    /// </summary>
    public ImmutableArray<VarianceShare> Shares { get; internal init; }

    /// <summary>What the shares leave: effects that are not straight lines, and parts that act together.</summary>
    public Ratio Unexplained => Ratio.FromDecimalFractions(Shares.IsEmpty ? 0 : Math.Max(0, 1 - Shares.Sum(s => s.Share.DecimalFractions)));

    /// <summary>The part whose spread matters most; null where nothing varies.</summary>
    public VarianceShare? MattersMost => Shares.IsEmpty ? null : Shares[0];
}
