using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What lamps and battery get over engine speed, by day and by night.</summary>
public sealed class EngineReport
{
    private readonly Lazy<ImmutableArray<ChargingTest>> _tests;

    internal EngineReport(
        ImmutableArray<EngineSeries> series,
        RegulatorDuty? regulator,
        GeneratorTest generator,
        Func<ImmutableArray<ChargingTest>> tests
    )
    {
        (Series, Regulator, Generator) = (series, regulator, generator);
        _tests = new(tests);
    }

    /// <summary>Share of its light below which a headlamp counts as dim, 70 %: common practice, no source.</summary>
    internal static Ratio GoodLight { get; } = Ratio.FromPercent(70);

    /// <summary>The settings followed: by day, by night and with the brake held, as far as the bike has them.</summary>
    public ImmutableArray<EngineSeries> Series { get; }

    /// <summary>The duty of a shunt regulator or a Zener diode; null without one.</summary>
    internal RegulatorDuty? Regulator { get; }

    /// <summary>What a meter should show at the battery: engine off, at the slowest and at the fastest listed speed, by
    /// day and by night.</summary>
    internal ImmutableArray<ChargingTest> Tests => _tests.Value;

    /// <summary>What is found: a regulator that makes more heat than it is rated for, and a voltage that overcharges
    /// the battery.</summary>
    public ImmutableArray<Finding> Findings =>
        [
            .. Regulator is { IsOverloaded: true, Worst: { } worst, Rating: { } rating }
                ?
                [
                    new Finding(FindingKind.RegulatorOverloaded, Severity.Fault, "regulator")
                    {
                        Value = worst.Bus!.RegulatorHeat,
                        Limit = rating,
                        Setting = worst.Setting,
                        Figures = [worst.Bus.Speed, worst.Bus.RegulatorCurrent],
                    },
                ]
                : Array.Empty<Finding>(),
            .. Overvoltage() is { } over ? [over] : Array.Empty<Finding>(),
        ];

    private Finding? Overvoltage()
    {
        OperatingPoint? highest = Series
            .SelectMany(s => s.Points)
            .Concat(Regulator is null ? [] : Regulator.LightsOff)
            .MaxBy(p => p.Bus!.BatteryVoltage.Volts);
        if (highest?.Bus is not { } bus)
            return null;
        double cells = highest.Solved.Bike.SystemVoltage.Volts / 12,
            limit = Constants.Of("v_overcharge_12") * cells;
        bool isFault = bus.BatteryVoltage.Volts > Constants.Of("v_overcharge_fault_12") * cells;
        return bus.BatteryVoltage.Volts > limit
            ? new Finding(
                FindingKind.BatteryOvervoltage,
                isFault ? Severity.Fault : Severity.Caution,
                "battery"
            )
            {
                Value = bus.BatteryVoltage,
                Limit = ElectricPotential.FromVolts(limit),
                Setting = highest.Setting,
                Figures = [bus.Speed],
            }
            : null;
    }

    /// <summary>What is measured on the unplugged generator.</summary>
    internal GeneratorTest Generator { get; }

    /// <summary>The night, else the day; null where neither can be solved at any known speed.</summary>
    public EngineSeries? Main =>
        Series.FirstOrDefault(s => s.Kind == EngineSeriesKind.Night) ?? Series.FirstOrDefault();

    /// <summary>Follows a bike over engine speed.</summary>
    /// <param name="bike">A bike with a battery and a charging list.</param>
    /// <param name="points">Its operating points, of which the settings of day and night are chosen.</param>
    /// <param name="options">What the lists do not say; null for the defaults.</param>
    /// <param name="fuses">Which switches and loads are momentary; null for the defaults.</param>
    internal static EngineReport Of(
        Bike bike,
        IReadOnlyList<OperatingPoint> points,
        ChargingOptions? options = null,
        FuseOptions? fuses = null
    ) => new EngineReporter(bike, points, options ?? ChargingOptions.Default, fuses ?? new FuseOptions()).Report();
}
