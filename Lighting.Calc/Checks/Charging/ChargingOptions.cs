using UnitsNet;

namespace Lighting.Calc;

/// <summary>What the lists do not say about a bike's charging. Every default is a typical value whose source stands in
/// <c>tables/constants.csv</c>, unless stated otherwise.</summary>
public sealed record ChargingOptions
{
    /// <summary>All defaults.</summary>
    public static ChargingOptions Default { get; } = new();

    /// <summary>How output is found from the points; the curve by default.</summary>
    public ChargingModel Model { get; init; }

    /// <summary>What keeps surplus out of a full battery; not stated by default, which takes what the bike
    /// states.</summary>
    public RegulatorKind Regulator { get; init; }

    /// <summary>The most a shunt regulator can take, such as a Zener diode's rating, zero or more; null where it takes
    /// everything.</summary>
    public ElectricCurrent? ShuntLimit { get; init; }

    /// <summary>Voltage lost in the rectifier, zero or more; 1.7 V of a silicon bridge by default, zero for a
    /// direct-current dynamo. The charging list is the output behind the rectifier, so that this counts for its heat
    /// and, with a fitted coil, for the cut-in.</summary>
    public ElectricPotential BridgeDrop { get; init; } = ElectricPotential.FromVolts(ChargingConstants.BridgeDropVolts);

    /// <summary>Field current of an excited alternator, zero or more: a load whenever the engine runs. Zero by default
    /// (permanent magnet).</summary>
    public ElectricCurrent FieldCurrent { get; init; } = ElectricCurrent.Zero;

    /// <summary>Ampere-hours stored for each put in, above 0 to 1; 0.9 by default.</summary>
    public Ratio ChargeEfficiency { get; init; } = Ratio.FromDecimalFractions(ChargingConstants.ChargeEfficiency);

    /// <summary>Peukert's exponent, 1 to 2; 1.2 by default (flooded; about 1.1 for a sealed glass-mat
    /// battery).</summary>
    public double PeukertExponent { get; init; } = ChargingConstants.PeukertExponent;

    /// <summary>The time in which the battery gives its rated capacity, above zero; 10 h by default, the rate
    /// motorcycle batteries are marked at (common practice, no source).</summary>
    public Duration RatedTime { get; init; } = Duration.FromHours(10);

    /// <summary>State of charge at the start of the ride and of the standing time, 0 to 1; full by default.</summary>
    public Ratio InitialStateOfCharge { get; init; } = Ratio.FromPercent(100);

    /// <summary>State of charge at which the engine no longer starts, 0 to 1; a quarter by default (common practice, no
    /// source).</summary>
    public Ratio NoStartStateOfCharge { get; init; } = Ratio.FromPercent(25);

    /// <summary>What keeps surplus out of a full battery: of the options, else of the bike.</summary>
    internal RegulatorKind RegulatorOf(Bike bike) => Regulator == RegulatorKind.NotStated ? bike.Regulator : Regulator;

    internal void Check()
    {
        Require(Finite(BridgeDrop.Volts) && BridgeDrop.Volts >= 0, nameof(BridgeDrop), "zero or more volts");
        Require(Finite(FieldCurrent.Amperes) && FieldCurrent.Amperes >= 0, nameof(FieldCurrent), "zero or more amps");
        Require(
            ShuntLimit is not { } limit || (Finite(limit.Amperes) && limit.Amperes >= 0),
            nameof(ShuntLimit),
            "zero or more amps"
        );
        Require(
            ChargeEfficiency.DecimalFractions is > 0 and <= 1,
            nameof(ChargeEfficiency),
            "greater than 0 and at most 1"
        );
        Require(PeukertExponent is >= 1 and <= 2, nameof(PeukertExponent), "between 1 and 2");
        Require(Finite(RatedTime.Hours) && RatedTime.Hours > 0, nameof(RatedTime), "greater than zero");
        Require(InitialStateOfCharge.DecimalFractions is >= 0 and <= 1, nameof(InitialStateOfCharge), "0 to 1");
        Require(NoStartStateOfCharge.DecimalFractions is >= 0 and <= 1, nameof(NoStartStateOfCharge), "0 to 1");
    }

    private static bool Finite(double value) => double.IsFinite(value);

    private static void Require(bool holds, string name, string range)
    {
        if (!holds)
            throw new ArgumentOutOfRangeException(name, $"{name} must be {range}.");
    }
}
