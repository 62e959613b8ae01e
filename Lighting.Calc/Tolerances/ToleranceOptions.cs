using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a look at the tolerances may be told besides the bike.</summary>
public sealed record ToleranceOptions
{
    /// <summary>Fewest samples: below, the outer percentiles rest on a handful.</summary>
    public const int FewestSamples = 100;

    /// <summary>Most samples.</summary>
    public const int MostSamples = 1_000_000;

    /// <summary>Only the settings in which this holds are looked at.</summary>
    public Condition When { get; init; } = Condition.Always;

    /// <summary>
    /// Volts of the source before the battery's resistance, above zero; null takes the bike's charging volts with the regulator's spread.
    /// The bike's battery volts take the battery's spread; any other volts count as measured and have none.
    /// </summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>How fuses are judged.</summary>
    public FuseOptions Fuses { get; init; } = new();

    /// <summary>How charging is judged; only <see cref="ChargingModel.Curve"/>.</summary>
    public ChargingOptions Charging { get; init; } = ChargingOptions.Default;

    /// <summary>How many bikes are drawn, <see cref="FewestSamples"/> to <see cref="MostSamples"/>; 10,000 by default.</summary>
    public int Samples { get; init; } = 10_000;

    /// <summary>Which bikes are drawn: the same seed draws the same ones on every machine. 1 by default.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>By how much all spreads are drawn in, 0 to 100 %: 100 % (the default) takes them as the table has them, 0 % leaves the listed values.</summary>
    public Ratio Scale { get; init; } = Ratio.FromPercent(100);

    /// <summary>Most threads, 1 or more; null leaves it to the runtime. The answer does not depend on it.</summary>
    public int? Threads { get; init; }

    internal void Check()
    {
        if (Samples is < FewestSamples or > MostSamples)
            throw new ArgumentOutOfRangeException(nameof(Samples), Samples, $"The samples are {FewestSamples} to {MostSamples}.");
        if (!(Scale.DecimalFractions is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(Scale), Scale, "The scale is 0 to 100 %.");
        if (Threads is < 1)
            throw new ArgumentOutOfRangeException(nameof(Threads), Threads, "There is at least one thread.");
        if (Supply is { } supply && !(supply.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(Supply), supply, "The supply volts are above zero.");
        if (Charging.Model != ChargingModel.Curve)
            throw new ArgumentException("Tolerances are calculated on the charging curve only, not on a fitted machine or coil.", nameof(Charging));
    }
}
