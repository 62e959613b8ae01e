using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The instruments, the tolerances and the habits of the trade that fault finding reckons with.</summary>
/// <remarks>The defaults without a source named beside them are common practice.</remarks>
public sealed record FaultFindingOptions
{
    /// <summary>Input resistance of the voltmeter, above zero: 10 MΩ, as digital meters have.</summary>
    public ElectricResistance MeterResistance { get; init; } = ElectricResistance.FromMegaohms(10);

    /// <summary>Limit of error of the meter as a share of the reading, zero or more: ±1 %.</summary>
    public Ratio MeterAccuracy { get; init; } = Ratio.FromPercent(1);

    /// <summary>Standard deviation of what a meter adds to its limit of error on volts: digits, leads and the hand; above zero.</summary>
    public ElectricPotential MeterFloor { get; init; } = ElectricPotential.FromVolts(0.015);

    /// <summary>The same on amps, above zero.</summary>
    public ElectricCurrent AmmeterFloor { get; init; } = ElectricCurrent.FromAmperes(0.03);

    /// <summary>Resistance of the ammeter, its leads and its own fuse, above zero.</summary>
    public ElectricResistance AmmeterResistance { get; init; } = ElectricResistance.FromMilliohms(20);

    /// <summary>Resistance of the ohmmeter's leads, zero or more, which it cannot tell from the part's: below it all parts read alike.</summary>
    public ElectricResistance OhmmeterLeads { get; init; } = ElectricResistance.FromOhms(0.2);

    /// <summary>Standard deviation of the battery volts about those of the list, as a share of them, zero or more.</summary>
    public Ratio BatteryTolerance { get; init; } = Ratio.FromPercent(2);

    /// <summary>Standard deviation of a lighting coil's volts about those of the coil fitted to the charging list, as a share of them, zero or more: magnets age.</summary>
    public Ratio CoilTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>Standard deviation of the engine speed at each reading about <see cref="EngineSpeed"/>, as a share of it, zero or more; only on direct lighting.</summary>
    public Ratio SpeedTolerance { get; init; } = Ratio.FromPercent(3);

    /// <summary>Standard deviation of every lamp's current about its specification's, as a share of it, zero or more; published limits are 6 % to 10 % (<c>tables/lamps.csv</c>).</summary>
    public Ratio LampTolerance { get; init; } = Ratio.FromPercent(5);

    /// <summary>Standard deviation of every healthy joint's, contact's and wire's resistance about the list's, as a share of it, zero or more.</summary>
    public Ratio ConnectionTolerance { get; init; } = Ratio.FromPercent(30);

    /// <summary>Share of readings that are plainly wrong (misread, wrong point, wrong setting), above 0 to below 100 %. Keeps any answer from certainty.</summary>
    public Ratio BlunderShare { get; init; } = Ratio.FromPercent(2);

    /// <summary>
    /// Engine speed at which a bike with direct lighting is tested, above zero; null takes the slowest of its charging list, at which
    /// a lamp left alone on the coil suffers least. Without meaning on a bike with a battery.
    /// </summary>
    public RotationalSpeed? EngineSpeed { get; init; }

    /// <summary>Volts behind the battery's resistance while testing, above zero; null takes the battery's, engine off. Without meaning on direct lighting.</summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>Settings to test in: the sheet and the next test keep to those in which this holds. Readings may be of any.</summary>
    public Condition Within { get; init; } = Condition.Always;

    /// <summary>The test lamp; null takes the published 4 W lamp of the bike's system volts.</summary>
    public LampSpecification? TestLamp { get; init; }

    /// <summary>How often each fault is met; every row of <see cref="PublishedPriors"/> must be there.</summary>
    public ImmutableArray<FaultPrior> Priors { get; init; } = PublishedPriors;

    /// <summary>What each test costs; every row of <see cref="PublishedTestCosts"/> must be there.</summary>
    public ImmutableArray<TestCost> TestCosts { get; init; } = PublishedTestCosts;

    /// <summary>The rows of <c>tables/fault-priors.csv</c>.</summary>
    public static ImmutableArray<FaultPrior> PublishedPriors { get; } =
        [.. PublishedTable.Load("fault-priors").Read().Select(r => new FaultPrior(r.Text("fault"), r.Number("weight"), r.Text("source")))];

    /// <summary>The rows of <c>tables/test-efforts.csv</c>.</summary>
    public static ImmutableArray<TestCost> PublishedTestCosts { get; } =
        [.. PublishedTable.Load("test-efforts").Read().Select(r => new TestCost(r.Text("test"), r.Number("effort"), r.Text("source")))];

    internal void Check()
    {
        Require(MeterResistance.Ohms > 0, MeterResistance, nameof(MeterResistance), "above zero");
        Require(MeterAccuracy.Percent >= 0, MeterAccuracy, nameof(MeterAccuracy), "zero or more");
        Require(MeterFloor.Volts > 0, MeterFloor, nameof(MeterFloor), "above zero");
        Require(AmmeterFloor.Amperes > 0, AmmeterFloor, nameof(AmmeterFloor), "above zero");
        Require(AmmeterResistance.Ohms > 0, AmmeterResistance, nameof(AmmeterResistance), "above zero");
        Require(OhmmeterLeads.Ohms >= 0, OhmmeterLeads, nameof(OhmmeterLeads), "zero or more");
        Require(BatteryTolerance.Percent >= 0, BatteryTolerance, nameof(BatteryTolerance), "zero or more");
        Require(CoilTolerance.Percent >= 0, CoilTolerance, nameof(CoilTolerance), "zero or more");
        Require(SpeedTolerance.Percent >= 0, SpeedTolerance, nameof(SpeedTolerance), "zero or more");
        Require(LampTolerance.Percent >= 0, LampTolerance, nameof(LampTolerance), "zero or more");
        Require(ConnectionTolerance.Percent >= 0, ConnectionTolerance, nameof(ConnectionTolerance), "zero or more");
        Require(BlunderShare.Percent is > 0 and < 100, BlunderShare, nameof(BlunderShare), "above 0 to below 100 %");
        Require(Supply is not { Volts: <= 0 }, Supply, nameof(Supply), "above zero");
    }

    private static void Require(bool holds, object? value, string name, string range)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name, value, $"{name} of the fault finding options is {range}.");
    }

    internal double Weight(string fault) => Priors.FirstOrDefault(p => p.Fault == fault) is { Weight: > 0 } prior
        ? prior.Weight
        : throw new ArgumentException($"The priors need a weight above zero for '{fault}'.");

    internal double Cost(string test) => TestCosts.FirstOrDefault(c => c.Test == test) is { Cost: > 0 } cost
        ? cost.Cost
        : throw new ArgumentException($"The test costs need a value above zero for '{test}'.");
}
