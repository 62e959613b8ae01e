using UnitsNet;

namespace Lighting.Calc;

/// <summary>Options of the tolerance analysis.</summary>
public sealed record ToleranceOptions
{
    /// <summary>Fewest samples: below, the outer percentiles rest on a handful.</summary>
    public const int FewestSamples = 100;

    /// <summary>Most samples.</summary>
    public const int MostSamples = 1_000_000;

    /// <summary>How each bike is checked. A supply voltage counts as measured and has no spread; without one generator,
    /// regulator and battery hold theirs with their spreads, engine off the battery. Charging by
    /// <see cref="ChargingModel.Curve"/> only.</summary>
    public CheckOptions Check { get; init; } = new();

    /// <summary>Number of samples, <see cref="FewestSamples"/> to <see cref="MostSamples"/>; 10,000 by
    /// default.</summary>
    public int Samples { get; init; } = 10_000;

    /// <summary>Seed: the same seed gives the same samples on every machine. 1 by default.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Scale of all tolerances, 0 to 100 %: 100 % (default) as in the table, 0 % the listed values.</summary>
    public Ratio Scale { get; init; } = Ratio.FromPercent(100);

    /// <summary>Maximum number of threads, 1 or more; null leaves it to the runtime. Results do not depend on
    /// it.</summary>
    public int? Threads { get; init; }

    internal void Require()
    {
        if (Samples is < FewestSamples or > MostSamples)
            throw new ArgumentOutOfRangeException(
                nameof(Samples),
                Samples,
                $"Samples must be between {FewestSamples} and {MostSamples}."
            );
        if (!(Scale.DecimalFractions is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(Scale), Scale, "Scale must be between 0 and 100 %.");
        if (Threads is < 1)
            throw new ArgumentOutOfRangeException(nameof(Threads), Threads, "Threads must be at least 1.");
        if (Check.Supply is { } supply && !(supply.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(Check), supply, "Supply voltage must be greater than zero.");
        if (Check.Charging.Model != ChargingModel.Curve)
            throw new ArgumentException(
                "Tolerances are calculated on the charging curve only, not on a fitted machine or coil.",
                nameof(Check)
            );
    }
}
