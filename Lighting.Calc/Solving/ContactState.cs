using UnitsNet;

namespace Lighting.Calc;

/// <summary>A switch contact at one operating point.</summary>
internal sealed record ContactState
{
    internal ContactState(SwitchContact contact, bool closed, ElectricCurrent current, ElectricPotential drop) =>
        (Contact, Closed, Current, Drop) = (contact, closed, current, drop);

    /// <summary>The contact.</summary>
    public SwitchContact Contact { get; }

    /// <summary>Whether the setting closes it.</summary>
    public bool Closed { get; }

    /// <summary>Current, positive from its <c>from</c> to its <c>to</c>; zero when open.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Voltage lost in the closed contact, of the current's sign; zero when open.</summary>
    public ElectricPotential Drop { get; }
}
