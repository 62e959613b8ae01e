using UnitsNet;

namespace Lighting.Calc;

/// <summary>Options of the tolerance analysis.</summary>
public sealed record ToleranceOptions
{
    /// <summary>Fewest samples: below, the outer percentiles rest on a handful.</summary>
    public const int FewestSamples = 100;

    /// <summary>Most samples.</summary>
    public const int MostSamples = 1_000_000;

    /// <summary>Condition that limits the settings.</summary>
    public Condition When { get; init; } = Condition.Always;

    /// <summary>Whether the engine runs; running by default.</summary>
    public EngineState Engine { get; init; }

    /// <summary>
    /// Voltage of the source, above zero, as in <see cref="CheckOptions.Supply"/>; it counts as measured and has no
    /// spread. Null takes, engine running, what generator, regulator and battery hold with their spreads; engine off,
    /// the battery voltage with its spread.
    /// </summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>Options of the fuse check.</summary>
    public FuseOptions Fuses { get; init; } = new();

    /// <summary>Charging options; only <see cref="ChargingModel.Curve"/>.</summary>
    public ChargingOptions Charging { get; init; } = ChargingOptions.Default;

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

    internal void Check()
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
        if (Supply is { } supply && !(supply.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(Supply), supply, "Supply voltage must be greater than zero.");
        if (Charging.Model != ChargingModel.Curve)
            throw new ArgumentException(
                "Tolerances are calculated on the charging curve only, not on a fitted machine or coil.",
                nameof(Charging)
            );
    }
}
