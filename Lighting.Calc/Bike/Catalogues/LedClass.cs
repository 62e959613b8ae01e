using UnitsNet;

namespace Lighting.Calc;

/// <summary>A generic LED lamp that takes the place of the filament lamps of one socket class: one row of
/// <c>tables/led-classes.csv</c>.</summary>
/// <remarks>Typical of the trade, not of one maker's lamp: enter the figures of the actual lamp in a swap list where
/// they are known.</remarks>
public sealed record LedClass
{
    /// <summary>Its name, such as <c>LED stop-tail</c>.</summary>
    public required string Code { get; init; }

    /// <summary>The socket class it fits, as in <see cref="PublishedLamp.SocketClass"/>.</summary>
    public required string SocketClass { get; init; }

    /// <summary>Nominal system voltage.</summary>
    public required ElectricPotential SystemVoltage { get; init; }

    /// <summary>Electrical and light data; for a lamp of two functions those of the brighter one.</summary>
    public required LampSpecification Specification { get; init; }

    /// <summary>The second function of a lamp that has two, its code ending in <c>minor</c>; null for a lamp of one
    /// function.</summary>
    public required LampSpecification? Minor { get; init; }

    /// <summary>Source of the row.</summary>
    public required string Source { get; init; }
}
