using System.Collections.Immutable;
using System.Text.Json.Serialization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike's lighting as its lists describe it. Immutable; change one with a <c>with</c> expression.</summary>
/// <remarks>
/// <see cref="Validate"/> gives every fault of a bike built in code, by the ranges that its lists have; a calculation
/// refuses a bike whose parts have faults by an <see cref="ArgumentException"/> that holds all of them. Bikes are equal
/// by value, their parts included.
/// </remarks>
[JsonConverter(typeof(BikeJsonConverter))]
public sealed partial record Bike
{
    /// <summary>The reserved point at battery plus.</summary>
    public const string BatteryPlus = "battery +";

    /// <summary>The reserved point at battery minus.</summary>
    public const string BatteryMinus = "battery -";

    /// <summary>A bike with nothing fitted and the defaults of its system voltage.</summary>
    /// <param name="systemVoltage">Nominal system voltage, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not above zero.</exception>
    public static Bike ForSystem(ElectricPotential systemVoltage) =>
        systemVoltage.Volts > 0
            ? new()
            {
                SystemVoltage = systemVoltage,
                BatteryVoltage = BikeDefaults.BatteryVoltage(systemVoltage),
                ChargingVoltage = BikeDefaults.ChargingVoltage(systemVoltage),
            }
            : throw new ArgumentOutOfRangeException(
                nameof(systemVoltage),
                systemVoltage,
                "System voltage must be greater than zero."
            );

    /// <summary>Name.</summary>
    public string Name { get; init; } = "";

    /// <summary>Nominal system voltage, above zero; usually 6 V or 12 V.</summary>
    public ElectricPotential SystemVoltage { get; init; } = BikeDefaults.SystemVoltage;

    /// <summary>Battery voltage, engine off and without load, above zero.</summary>
    public ElectricPotential BatteryVoltage { get; init; } = BikeDefaults.BatteryVoltage(BikeDefaults.SystemVoltage);

    /// <summary>Charging voltage, at the battery's terminals, above zero; for a lighting coil the voltage
    /// (rms) at which its output was measured.</summary>
    public ElectricPotential ChargingVoltage { get; init; } = BikeDefaults.ChargingVoltage(BikeDefaults.SystemVoltage);

    /// <summary>Battery capacity at its 10 h or 20 h rate, above zero; null if unknown.</summary>
    public ElectricCharge? BatteryCapacity { get; init; }

    /// <summary>Resistance of the battery and its posts, zero or more.</summary>
    public ElectricResistance BatteryResistance { get; init; } = BikeDefaults.BatteryResistance;

    /// <summary>Temperature of the conductors, −60 °C to 250 °C: that of every conductor where it is stated, else that
    /// of one without current.</summary>
    /// <remarks>Where it is not stated it is the ambient temperature, 20 °C without one, and each conductor warms with
    /// its current. It is never below a stated <see cref="AmbientTemperature"/>.</remarks>
    public Temperature WireTemperature
    {
        get =>
            StatedWireTemperature is not { } stated
                ? ColdWireTemperature ?? AmbientTemperature ?? BikeDefaults.WireTemperature
            : AmbientTemperature is { } air && air > stated ? air
            : stated;
        init => StatedWireTemperature = value;
    }

    /// <summary>The temperature of the conductors as stated; null where it is not.</summary>
    internal Temperature? StatedWireTemperature { get; private init; }

    /// <summary>The temperature of conductors without current, where it is drawn from a tolerance.</summary>
    private Temperature? ColdWireTemperature { get; init; }

    /// <summary>The same bike with its wires at another temperature, whether that is stated or is one without
    /// current.</summary>
    internal Bike WithWiresAt(Temperature temperature) =>
        StatedWireTemperature is null
            ? this with
            {
                ColdWireTemperature = temperature,
            }
            : this with
            {
                WireTemperature = temperature,
            };

    /// <summary>Temperature of the air round fuses and wires, −40 °C to 85 °C; null where not stated: then 25 °C round
    /// fuses and 30 °C round wires, those of their published figures.</summary>
    public Temperature? AmbientTemperature { get; init; }

    /// <summary>The kind of cable of the runs that do not state their own; null where not stated.</summary>
    public CableKind? Cable { get; init; }

    /// <summary>Which terminal is on the frame.</summary>
    public Earth Earth { get; init; }

    /// <summary>Supply of the lamps.</summary>
    public LightingSupply Lighting { get; init; }

    /// <summary>Largest drop, source to lamp and back, that the builder allows, as a share of the source voltage: above
    /// 0 to below 100 %.</summary>
    /// <remarks>Where it is stated it decides for every lamp without an <see cref="FittedLamp.AllowedDrop"/> of its
    /// own; else 5 % for sizing, and the published limits of tables/drop-limits.csv for what is judged.</remarks>
    public Ratio AllowedDrop
    {
        get => StatedDrop ?? BikeDefaults.AllowedDrop;
        init => StatedDrop = value;
    }

    /// <summary>The allowed drop as stated; null where it is not.</summary>
    internal Ratio? StatedDrop { get; private init; }

    /// <summary>What keeps surplus output out of a full battery.</summary>
    public RegulatorKind Regulator { get; init; }

    /// <summary>Voltage that a Zener diode holds, above zero; null where the regulator is of another kind, or its
    /// voltage is not stated.</summary>
    public ElectricPotential? ZenerVoltage { get; init; }

    /// <summary>Slope resistance of a shunt regulator or a Zener diode, zero or more: by how much its voltage rises
    /// with its current.</summary>
    public ElectricResistance RegulatorResistance { get; init; }

    /// <summary>Where the regulator takes its voltage. Without effect where the generator joins the harness at the
    /// battery: there it is one place.</summary>
    public RegulatorPlace RegulatorPlace { get; init; }

    /// <summary>Heat that a shunt regulator or a Zener diode is rated for, above zero; null if unknown.</summary>
    public Power? RegulatorRating { get; init; }

    /// <summary>Resistance between two leads of the unplugged generator, cold, zero or more; null if unknown.</summary>
    public ElectricResistance? GeneratorResistance { get; init; }

    /// <summary>The point at which the generator, behind its rectifier, joins the harness; null where that is the
    /// battery. Wires and fuses alone join it to the battery, as those of an ammeter between the battery
    /// and the rest.</summary>
    public string? GeneratorPoint { get; init; }

    /// <summary>What supplies the ignition.</summary>
    public IgnitionKind Ignition { get; init; }

    /// <summary>Type of flasher.</summary>
    public FlasherKind Flasher { get; init; }

    /// <summary>Rated load of the flasher, above zero, such as 42 W for two lamps of 21 W; null if unknown.</summary>
    public Power? FlasherLoad { get; init; }

    /// <summary>The lamps and other loads.</summary>
    public ImmutableArray<FittedLamp> Lamps { get; init; } = [];

    /// <summary>The wires; empty if the lamps are connected directly across the battery.</summary>
    public ImmutableArray<Run> Runs { get; init; } = [];

    /// <summary>The switch contacts.</summary>
    public ImmutableArray<SwitchContact> Switches { get; init; } = [];

    /// <summary>The fuses.</summary>
    public ImmutableArray<Fuse> Fuses { get; init; } = [];

    /// <summary>The charging curve.</summary>
    public ImmutableArray<ChargingPoint> Charging { get; init; } = [];

    /// <summary>The ride to balance.</summary>
    public ImmutableArray<RideStretch> Ride { get; init; } = [];

    /// <summary>Whether runs are listed, so that contacts and wires determine the voltage at each lamp.</summary>
    public bool HasNetwork => !Runs.IsEmpty;

    /// <summary>Whether neither runs nor a <see cref="FittedLamp.LitWhen"/> state which lamps are lit, so that all
    /// count as on.</summary>
    public bool CountsAllLampsTogether => !HasNetwork && Lamps.All(l => l.LitWhen.Terms.IsEmpty);

    /// <summary>The battery terminal that is not connected to the frame.</summary>
    public string LivePoint => Earth == Earth.Negative ? BatteryPlus : BatteryMinus;

    /// <summary>The battery terminal that is connected to the frame (earth).</summary>
    public string EarthPoint => Earth == Earth.Negative ? BatteryMinus : BatteryPlus;

    /// <summary>1 where current flows from plus through the loads to the frame, −1 where it flows the other
    /// way.</summary>
    internal double EarthSign => Earth == Earth.Negative ? 1 : -1;
}
