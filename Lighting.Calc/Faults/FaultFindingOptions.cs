using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Options of fault finding: instruments, tolerances, priors and test costs.</summary>
/// <remarks>The defaults without a source named beside them are common practice.</remarks>
public sealed record FaultFindingOptions
{
    /// <summary>Input resistance of the voltmeter, above zero: 10 MΩ, as digital meters have.</summary>
    public ElectricResistance MeterResistance { get; init; } = ElectricResistance.FromMegaohms(10);

    /// <summary>Accuracy of the meter as a share of the reading, zero or more: ±1 %.</summary>
    public Ratio MeterAccuracy { get; init; } = Ratio.FromPercent(1);

    /// <summary>Standard deviation of a voltage reading besides <see cref="MeterAccuracy"/>: digits, leads and contact;
    /// above zero.</summary>
    public ElectricPotential MeterFloor { get; init; } = ElectricPotential.FromVolts(0.015);

    /// <summary>The same for a current reading, above zero.</summary>
    public ElectricCurrent AmmeterFloor { get; init; } = ElectricCurrent.FromAmperes(0.03);

    /// <summary>Resistance of the ammeter, its leads and its own fuse, above zero.</summary>
    public ElectricResistance AmmeterResistance { get; init; } = ElectricResistance.FromMilliohms(20);

    /// <summary>Resistance of the ohmmeter's leads, zero or more, which is included in every reading.</summary>
    public ElectricResistance OhmmeterLeads { get; init; } = ElectricResistance.FromOhms(0.2);

    /// <summary>Standard deviation of the battery voltage about that of the list, as a share of it, zero or
    /// more.</summary>
    public Ratio BatteryTolerance { get; init; } = Ratio.FromPercent(2);

    /// <summary>Standard deviation of a lighting coil's voltage about that of the coil fitted to the charging list, as
    /// a share of it, zero or more: magnets age.</summary>
    public Ratio CoilTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>Standard deviation of the engine speed at each reading about <see cref="EngineSpeed"/>, as a share of
    /// it, zero or more; only with the engine running.</summary>
    public Ratio SpeedTolerance { get; init; } = Ratio.FromPercent(3);

    /// <summary>Standard deviation of every lamp's current about its specification's, as a share of it, zero or more;
    /// published limits are 6 % to 10 % (<c>tables/lamps.csv</c>).</summary>
    public Ratio LampTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>Standard deviation of every healthy joint's, contact's and wire's resistance about the list's, as a
    /// share of it, zero or more.</summary>
    public Ratio ConnectionTolerance { get; init; } = Ratio.FromPercent(30);

    /// <summary>Share of gross errors (misread, wrong point, wrong setting), above 0 to below 100 %: no result is
    /// certain.</summary>
    public Ratio BlunderShare { get; init; } = Ratio.FromPercent(2);

    /// <summary>Whether the engine runs while a bike with a battery is tested, at <see cref="EngineSpeed"/>; off by
    /// default. Not used with direct lighting or <see cref="Supply"/>.</summary>
    public EngineState Engine { get; init; } = EngineState.Off;

    /// <summary>Whether some readings state a running engine (<c>engine=3000</c> in <see cref="Reading.When"/>) though
    /// <see cref="Engine"/> is off: faults of the charging system then count too.</summary>
    public bool ConsidersCharging { get; init; }

    /// <summary>
    /// Engine speed of the test, above zero. Null takes, with a battery and the engine running, the slowest speed of
    /// the charging list that gives 80 % of its largest output (common practice, no source); on direct lighting the
    /// slowest of the list, at which the overvoltage of a single remaining lamp is lowest.
    /// </summary>
    public RotationalSpeed? EngineSpeed { get; init; }

    /// <summary>Supply voltage while testing, before the battery resistance, above zero; null for the battery voltage,
    /// engine off. Not used with direct lighting.</summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>Condition that limits the settings of the sheet and of the next test. Readings may be of any
    /// setting.</summary>
    public Condition Within { get; init; } = Condition.Always;

    /// <summary>The test lamp; null for the published 4 W lamp of the system voltage.</summary>
    public LampSpecification? TestLamp { get; init; }

    /// <summary>Prior weight of each fault; every row of <see cref="PublishedPriors"/> is required.</summary>
    public ImmutableArray<FaultPrior> Priors { get; init; } = PublishedPriors;

    /// <summary>Cost of each test; every row of <see cref="PublishedTestCosts"/> is required.</summary>
    internal ImmutableArray<TestCost> TestCosts { get; init; } = PublishedTestCosts;

    /// <summary>The rows of <c>tables/fault-priors.csv</c>.</summary>
    public static ImmutableArray<FaultPrior> PublishedPriors { get; } =
    [
        .. PublishedTable
            .Load("fault-priors")
            .Read()
            .Select(r => new FaultPrior(r.Text("fault"), r.Number("weight"), r.Text("source"))),
    ];

    /// <summary>The rows of <c>tables/test-costs.csv</c>.</summary>
    internal static ImmutableArray<TestCost> PublishedTestCosts { get; } =
    [
        .. PublishedTable
            .Load("test-costs")
            .Read()
            .Select(r => new TestCost(r.Text("test"), r.Number("cost"), r.Text("source"))),
    ];

    internal void Check()
    {
        Require(MeterResistance.Ohms > 0, MeterResistance, nameof(MeterResistance), "greater than zero");
        Require(MeterAccuracy.Percent >= 0, MeterAccuracy, nameof(MeterAccuracy), "zero or more");
        Require(MeterFloor.Volts > 0, MeterFloor, nameof(MeterFloor), "greater than zero");
        Require(AmmeterFloor.Amperes > 0, AmmeterFloor, nameof(AmmeterFloor), "greater than zero");
        Require(AmmeterResistance.Ohms > 0, AmmeterResistance, nameof(AmmeterResistance), "greater than zero");
        Require(OhmmeterLeads.Ohms >= 0, OhmmeterLeads, nameof(OhmmeterLeads), "zero or more");
        Require(BatteryTolerance.Percent >= 0, BatteryTolerance, nameof(BatteryTolerance), "zero or more");
        Require(CoilTolerance.Percent >= 0, CoilTolerance, nameof(CoilTolerance), "zero or more");
        Require(SpeedTolerance.Percent >= 0, SpeedTolerance, nameof(SpeedTolerance), "zero or more");
        Require(LampTolerance.Percent >= 0, LampTolerance, nameof(LampTolerance), "zero or more");
        Require(ConnectionTolerance.Percent >= 0, ConnectionTolerance, nameof(ConnectionTolerance), "zero or more");
        Require(
            BlunderShare.Percent is > 0 and < 100,
            BlunderShare,
            nameof(BlunderShare),
            "between 0 and 100 %, both excluded"
        );
        Require(Supply is not { Volts: <= 0 }, Supply, nameof(Supply), "greater than zero");
    }

    private static void Require(bool holds, object? value, string name, string range)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name, value, $"{name} must be {range}.");
    }

    internal double Weight(string fault) =>
        Priors.FirstOrDefault(p => p.Fault == fault) is { Weight: > 0 } prior
            ? prior.Weight
            : throw new ArgumentException($"The prior weight of '{fault}' must be greater than zero.");

    internal double Cost(string test) =>
        TestCosts.FirstOrDefault(c => c.Test == test) is { Cost: > 0 } cost
            ? cost.Cost
            : throw new ArgumentException($"The test cost of '{test}' must be greater than zero.");

    private object?[] Figures =>
        [
            MeterResistance,
            MeterAccuracy,
            MeterFloor,
            AmmeterFloor,
            AmmeterResistance,
            OhmmeterLeads,
            BatteryTolerance,
            CoilTolerance,
            SpeedTolerance,
            LampTolerance,
            ConnectionTolerance,
            BlunderShare,
            EngineSpeed,
            Engine,
            ConsidersCharging,
            Supply,
            Within,
            TestLamp,
        ];

    /// <inheritdoc/>
    public bool Equals(FaultFindingOptions? other) =>
        other is not null
        && Figures.AsSpan().SequenceEqual(other.Figures)
        && Priors.HoldsSame(other.Priors)
        && TestCosts.HoldsSame(other.TestCosts);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(MeterResistance, Priors.HashOfParts());
}
