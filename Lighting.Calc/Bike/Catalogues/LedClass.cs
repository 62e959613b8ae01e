using UnitsNet;

namespace Lighting.Calc;

/// <summary>A generic LED lamp that takes the place of the filament lamps of one socket class: one row of <c>tables/led-classes.csv</c>.</summary>
/// <remarks>What is usual in the trade, not one maker's lamp: put the figures of the lamp at hand in a swap list where they are known.</remarks>
public sealed record LedClass
{
    /// <summary>Its name, such as <c>LED stop-tail</c>.</summary>
    public required string Code { get; init; }

    /// <summary>The socket class it fits, as in <see cref="PublishedLamp.SocketClass"/>.</summary>
    public required string SocketClass { get; init; }

    /// <summary>Nominal system volts it is made for.</summary>
    public required ElectricPotential SystemVoltage { get; init; }

    /// <summary>What it draws and gives; of two functions the bright one.</summary>
    public required LampSpecification Specification { get; init; }

    /// <summary>The second function of a lamp that has two, its code ending in <c>minor</c>; null for a lamp of one function.</summary>
    public required LampSpecification? Minor { get; init; }

    /// <summary>Where the row comes from.</summary>
    public required string Source { get; init; }
}
