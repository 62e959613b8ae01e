namespace Lighting.Calc;

/// <content>Equality by value, that of the parts included.</content>
public sealed partial record Bike
{
    private object?[] Items =>
        [
            Name,
            SystemVoltage,
            BatteryVoltage,
            ChargingVoltage,
            BatteryCapacity,
            BatteryResistance,
            StatedWireTemperature,
            WireTemperature,
            AmbientTemperature,
            Cable,
            Earth,
            Lighting,
            StatedDrop,
            Regulator,
            ZenerVoltage,
            RegulatorResistance,
            RegulatorPlace,
            RegulatorRating,
            GeneratorResistance,
            GeneratorPoint,
            Ignition,
            Flasher,
            FlasherLoad,
        ];

    /// <summary>Whether another bike has the same values, and the same parts in the same order.</summary>
    /// <remarks>Quantities are the same in the same unit: 12 V is not 12 000 mV. Lists are read in one unit
    /// each.</remarks>
    /// <param name="other">The other bike.</param>
    public bool Equals(Bike? other) =>
        ReferenceEquals(this, other)
        || (
            other is not null
            && Items.AsSpan().SequenceEqual(other.Items)
            && Lamps.HoldsSame(other.Lamps)
            && Runs.HoldsSame(other.Runs)
            && Switches.HoldsSame(other.Switches)
            && Fuses.HoldsSame(other.Fuses)
            && Charging.HoldsSame(other.Charging)
            && Ride.HoldsSame(other.Ride)
        );

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, SystemVoltage, Lamps.HashOfParts(), Runs.HashOfParts());
}
