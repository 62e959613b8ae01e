using UnitsNet;

namespace Lighting.Calc;

/// <summary>A generic LED lamp that takes the place of the filament lamps of one socket class: one row of
/// <c>tables/led-classes.csv</c>.</summary>
/// <remarks>Typical of the trade, not of one maker's lamp: enter the figures of the actual lamp in a swap list where
/// they are known.</remarks>
/// <param name="Code">Its name, such as <c>LED stop-tail</c>.</param>
/// <param name="SocketClass">The socket class it fits, as in <see cref="PublishedLamp.SocketClass"/>.</param>
/// <param name="SystemVoltage">Nominal system voltage.</param>
/// <param name="Specification">Electrical and light data; for a lamp of two functions those of the brighter
/// one.</param>
/// <param name="Minor">The second function of a lamp that has two, its code ending in <c>minor</c>; null for a lamp
/// of one function.</param>
/// <param name="Source">Source of the row.</param>
internal sealed record LedClass(
    string Code,
    string SocketClass,
    ElectricPotential SystemVoltage,
    LampSpecification Specification,
    LampSpecification? Minor,
    string Source
);
