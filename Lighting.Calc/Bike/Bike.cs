using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike's lighting as its lists describe it. Immutable; change one with a <c>with</c> expression.</summary>
/// <remarks>
/// The ranges told here and in the records of its parts are checked where lists are read. Of a bike built in code, what computes with a
/// resistance, length, quantity, bundle, rating, temperature or source volts outside its range throws an <see cref="ArgumentOutOfRangeException"/>;
/// the others (<see cref="FittedLamp.Duty"/>, <see cref="AllowedDrop"/>, <see cref="BatteryCapacity"/>, durations, names that must differ) are the caller's to keep.
/// </remarks>
public sealed record Bike
{
    /// <summary>The reserved point at battery plus.</summary>
    public const string BatteryPlus = "battery +";

    /// <summary>The reserved point at battery minus.</summary>
    public const string BatteryMinus = "battery -";

    /// <summary>A bike with nothing fitted, everything assumed for its system volts.</summary>
    /// <param name="systemVoltage">Nominal system volts, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volts are not above zero.</exception>
    public static Bike ForSystem(ElectricPotential systemVoltage) => systemVoltage.Volts > 0
        ? new()
        {
            SystemVoltage = systemVoltage,
            BatteryVoltage = BikeDefaults.BatteryVoltage(systemVoltage),
            ChargingVoltage = BikeDefaults.ChargingVoltage(systemVoltage),
        }
        : throw new ArgumentOutOfRangeException(nameof(systemVoltage), systemVoltage, "A bike's system volts are above zero.");

    /// <summary>Its name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Nominal system volts, above zero; usually 6 V or 12 V.</summary>
    public ElectricPotential SystemVoltage { get; init; } = BikeDefaults.SystemVoltage;

    /// <summary>Volts of the battery with the engine off and no load, above zero.</summary>
    public ElectricPotential BatteryVoltage { get; init; } = BikeDefaults.BatteryVoltage(BikeDefaults.SystemVoltage);

    /// <summary>Volts of the source with the engine charging, before <see cref="BatteryResistance"/>, above zero; of a lighting coil the volts (rms) at which its output was measured.</summary>
    public ElectricPotential ChargingVoltage { get; init; } = BikeDefaults.ChargingVoltage(BikeDefaults.SystemVoltage);

    /// <summary>Battery capacity at its 10 h or 20 h rate, above zero; null where not known.</summary>
    public ElectricCharge? BatteryCapacity { get; init; }

    /// <summary>Resistance of the battery and its posts, zero or more.</summary>
    public ElectricResistance BatteryResistance { get; init; } = BikeDefaults.BatteryResistance;

    /// <summary>Temperature of the conductors, −60 °C to 250 °C.</summary>
    public Temperature WireTemperature { get; init; } = BikeDefaults.WireTemperature;

    /// <summary>Temperature of the air round fuses and wires, −40 °C to 85 °C; null where not stated: then 25 °C round fuses and 30 °C round wires, those of their published figures.</summary>
    public Temperature? AmbientTemperature { get; init; }

    /// <summary>The kind of cable of the runs that do not state their own; null where not stated.</summary>
    public CableKind? Cable { get; init; }

    /// <summary>Which terminal is on the frame.</summary>
    public Earth Earth { get; init; }

    /// <summary>What feeds the lamps.</summary>
    public LightingSupply Lighting { get; init; }

    /// <summary>Largest drop, source to lamp and back, that the builder allows, as a share of the source volts: above 0 to below 100 %.</summary>
    public Ratio AllowedDrop { get; init; } = BikeDefaults.AllowedDrop;

    /// <summary>What makes the indicators flash.</summary>
    public FlasherKind Flasher { get; init; }

    /// <summary>Nominal watts of the lamps that the flasher is made for, above zero, such as 42 W for two of 21 W; null where not stated.</summary>
    public Power? FlasherLoad { get; init; }

    /// <summary>The lamps and other loads.</summary>
    public ImmutableArray<FittedLamp> Lamps { get; init; } = [];

    /// <summary>The wires; empty when lamps hang straight on the battery.</summary>
    public ImmutableArray<Run> Runs { get; init; } = [];

    /// <summary>The switch contacts.</summary>
    public ImmutableArray<SwitchContact> Switches { get; init; } = [];

    /// <summary>The fuses.</summary>
    public ImmutableArray<Fuse> Fuses { get; init; } = [];

    /// <summary>The charging curve.</summary>
    public ImmutableArray<ChargingPoint> Charging { get; init; } = [];

    /// <summary>The ride to balance.</summary>
    public ImmutableArray<RideStretch> Ride { get; init; } = [];

    /// <summary>Whether the harness is known, so that contacts and wires decide what arrives.</summary>
    public bool HasNetwork => !Runs.IsEmpty;

    /// <summary>Whether neither wiring nor a <see cref="FittedLamp.LitWhen"/> says which lamps are lit, so that all are counted on together.</summary>
    public bool CountsAllLampsTogether => !HasNetwork && Lamps.All(l => l.LitWhen.Terms.IsEmpty);

    /// <summary>The battery terminal that the frame is not joined to.</summary>
    public string LivePoint => Earth == Earth.Negative ? BatteryPlus : BatteryMinus;

    /// <summary>The battery terminal that is joined to the frame.</summary>
    public string EarthPoint => Earth == Earth.Negative ? BatteryMinus : BatteryPlus;

    /// <summary>1 where current flows from plus through the loads to the frame, −1 where it flows the other way.</summary>
    internal double EarthSign => Earth == Earth.Negative ? 1 : -1;
}
