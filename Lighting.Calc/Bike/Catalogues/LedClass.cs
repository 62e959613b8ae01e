using UnitsNet;

namespace Lighting.Calc;

/// <summary>A generic LED lamp that takes the place of the filament lamps of one socket class: one row of
/// <c>tables/led-classes.csv</c>.</summary>
/// <remarks>Typical of the trade, not of one maker's lamp: enter the figures of the actual lamp in a swap list where
/// they are known.</remarks>
internal sealed record LedClass
{
    /// <summary>Its name, such as <c>LED stop-tail</c>.</summary>
    public string Code { get; init; } = null!;

    /// <summary>The socket class it fits, as in <see cref="PublishedLamp.SocketClass"/>.</summary>
    public string SocketClass { get; init; } = null!;

    /// <summary>Nominal system voltage.</summary>
    public ElectricPotential SystemVoltage { get; init; }

    /// <summary>Electrical and light data; for a lamp of two functions those of the brighter one.</summary>
    public LampSpecification Specification { get; init; } = null!;

    /// <summary>The second function of a lamp that has two, its code ending in <c>minor</c>; null for a lamp of one
    /// function.</summary>
    public LampSpecification? Minor { get; init; }

    /// <summary>Source of the row.</summary>
    public string Source { get; init; } = null!;
}
