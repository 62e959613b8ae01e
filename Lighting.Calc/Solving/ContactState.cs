using UnitsNet;

namespace Lighting.Calc;

/// <summary>A switch contact at one operating point.</summary>
/// <param name="Contact">The contact.</param>
/// <param name="Closed">Whether the setting closes it.</param>
/// <param name="Current">Current, positive from its <c>from</c> to its <c>to</c>; zero when open.</param>
/// <param name="Drop">Voltage lost in the closed contact, of the current's sign; zero when open.</param>
internal sealed record ContactState(
    SwitchContact Contact,
    bool Closed,
    ElectricCurrent Current,
    ElectricPotential Drop
);
