using UnitsNet;

namespace Lighting.Calc;

/// <summary>A resistance fitted to readings.</summary>
internal sealed class FittedResistance
{
    private FittedResistance(ElectricResistance best, ElectricResistance low, ElectricResistance? high) =>
        (Best, Low, High) = (best, low, high);

    /// <summary>The likeliest.</summary>
    public ElectricResistance Best { get; }

    /// <summary>Lower limit, with a probability of 95 %.</summary>
    public ElectricResistance Low { get; }

    /// <summary>Upper limit, with a probability of 95 %; null if an open connection is possible.</summary>
    public ElectricResistance? High { get; }

    internal static FittedResistance Of(double best, double low, double high) =>
        new(
            ElectricResistance.FromOhms(best),
            ElectricResistance.FromOhms(low),
            double.IsInfinity(high) ? null : ElectricResistance.FromOhms(high)
        );
}
