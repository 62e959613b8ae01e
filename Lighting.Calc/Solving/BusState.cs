using UnitsNet;

namespace Lighting.Calc;

/// <summary>The currents of the bus with the engine running: what the generator gives, and what battery, regulator and
/// field take. The bus is where the generator joins the harness: at the battery's terminals, unless the bike names
/// another point.</summary>
/// <remarks>Kirchhoff's current law: generator = harness + battery + regulator + field.</remarks>
public sealed class BusState
{
    internal BusState() { }

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed { get; internal init; }

    /// <summary>Voltage of the bus.</summary>
    public ElectricPotential Voltage { get; internal init; }

    /// <summary>Voltage at the battery's terminals: that of the bus, unless the generator joins elsewhere.</summary>
    public ElectricPotential BatteryVoltage { get; internal init; }

    /// <summary>Voltage that the regulator stands at: that of the bus or that at the battery's terminals, by
    /// <see cref="Bike.RegulatorPlace"/>.</summary>
    public ElectricPotential RegulatorVoltage { get; internal init; }

    /// <summary>Current the charging system could give at that voltage, zero or more.</summary>
    public ElectricCurrent AvailableCurrent { get; internal init; }

    /// <summary>Current it gives: less than it could where a series regulator or field control holds it back.</summary>
    public ElectricCurrent GeneratorCurrent { get; internal init; }

    /// <summary>Current into the battery, negative out of it.</summary>
    public ElectricCurrent BatteryCurrent { get; internal init; }

    /// <summary>Current of a shunt regulator or a Zener diode, zero or more.</summary>
    public ElectricCurrent RegulatorCurrent { get; internal init; }

    /// <summary>Field current of an excited alternator.</summary>
    public ElectricCurrent FieldCurrent { get; internal init; }

    /// <summary>Heat in a shunt regulator or a Zener diode that dissipates its current; one that shorts the coil for
    /// part of each wave makes far less.</summary>
    public Power RegulatorHeat => Power.FromWatts(RegulatorCurrent.Amperes * RegulatorVoltage.Volts);

    /// <summary>Voltage lost in the battery's own resistance while it discharges; zero while it does not.</summary>
    public ElectricPotential BatteryDrop { get; internal init; }

    /// <summary>Whether the battery discharges.</summary>
    public bool Discharges => BatteryCurrent.Amperes < 0;
}
