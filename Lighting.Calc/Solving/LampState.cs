using UnitsNet;

namespace Lighting.Calc;

/// <summary>A fitted lamp at one operating point.</summary>
public sealed record LampState
{
    internal LampState() { }

    /// <summary>The lamp.</summary>
    public FittedLamp Lamp { get; internal init; } = null!;

    /// <summary>Voltage across it; positive when its feed is on the live side of its return.</summary>
    public ElectricPotential Voltage { get; internal init; }

    /// <summary>Current of all of its quantity together, of the sign of <see cref="Voltage"/>.</summary>
    public ElectricCurrent Current { get; internal init; }

    /// <summary>Power of all of its quantity together: volts times current.</summary>
    public Power Power => Power.FromWatts(Voltage.Volts * Current.Amperes);

    /// <summary>Light against the light at its reference voltage, by its law; null for a load that gives
    /// none.</summary>
    public Ratio? RelativeLight => Lamp.Specification.RelativeLightAt(Voltage);

    /// <summary>Light against the published light, which is that at its lumen test voltage; null for a load that gives
    /// no light, and for an LED whose light is not published.</summary>
    public Ratio? PublishedLight => Lamp.Specification.PublishedLightAt(Voltage);

    /// <summary>Share of the voltage of the source that does not reach it; null when it is not
    /// fed.</summary>
    public Ratio? Drop { get; internal init; }

    /// <summary>Whether it is an LED driver whose voltage is too low to hold its power.</summary>
    public bool DroppedOut { get; internal init; }

    /// <summary>Whether it is an LED driver that is lit, with a second state the bike can hold in which it is
    /// dark.</summary>
    public bool MayDropOut { get; internal init; }
}
