using UnitsNet;

namespace Lighting.Calc;

/// <summary>Voltage drop in a length of wire, and the size or length that keeps it within a limit.</summary>
/// <remarks>
/// Formula: V = I · R, R by <see cref="WireSize.Resistance"/>. The length is that of all the wire the current flows
/// through: with a separate return, feed and return together. Source: FAA AC 43.13-1B chapter 11, section 5.
/// </remarks>
public static class VoltageDrop
{
    /// <summary>Voltage drop.</summary>
    /// <param name="current">Zero or more.</param>
    /// <param name="wireLength">Length of all wire that carries the current, zero or more.</param>
    /// <param name="wire">The size.</param>
    /// <param name="temperature">Conductor temperature, −60 °C to 250 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ElectricPotential Calculate(
        ElectricCurrent current,
        Length wireLength,
        WireSize wire,
        Temperature temperature
    ) => Checked(current) * wire.Resistance(wireLength, temperature);

    /// <summary>Longest wire within a voltage-drop limit.</summary>
    /// <param name="current">Above zero.</param>
    /// <param name="limit">Allowed voltage drop, zero or more.</param>
    /// <param name="wire">The size.</param>
    /// <param name="temperature">Conductor temperature, −60 °C to 250 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Length LongestWire(
        ElectricCurrent current,
        ElectricPotential limit,
        WireSize wire,
        Temperature temperature
    )
    {
        if (!(current.Amperes > 0))
            throw new ArgumentOutOfRangeException(nameof(current), current, "Current must be greater than zero.");
        CheckLimit(limit);
        return Length.FromMeters(
            limit.Volts / (current.Amperes * wire.Resistance(Length.FromMeters(1), temperature).Ohms)
        );
    }

    /// <summary>Smallest size within a voltage-drop limit; null if none is.</summary>
    /// <param name="current">Zero or more.</param>
    /// <param name="wireLength">Length of all wire that carries the current, zero or more.</param>
    /// <param name="limit">Allowed voltage drop, zero or more.</param>
    /// <param name="sizes">The sizes to choose from.</param>
    /// <param name="temperature">Conductor temperature, −60 °C to 250 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static WireSize? ThinnestWire(
        ElectricCurrent current,
        Length wireLength,
        ElectricPotential limit,
        IEnumerable<WireSize> sizes,
        Temperature temperature
    )
    {
        CheckLimit(limit);
        return sizes
            .OrderBy(w => w.CopperArea.SquareMillimeters)
            .FirstOrDefault(w => Calculate(current, wireLength, w, temperature).Volts <= limit.Volts);
    }

    private static void CheckLimit(ElectricPotential limit)
    {
        if (!(limit.Volts >= 0))
            throw new ArgumentOutOfRangeException(nameof(limit), limit, "Voltage-drop limit must be zero or more.");
    }

    private static ElectricCurrent Checked(ElectricCurrent current) =>
        current.Amperes >= 0
            ? current
            : throw new ArgumentOutOfRangeException(nameof(current), current, "Current must be zero or more.");
}
