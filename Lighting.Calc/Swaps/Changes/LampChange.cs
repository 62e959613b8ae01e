using UnitsNet;

namespace Lighting.Calc;

/// <summary>One fitted lamp before and after, in the setting of its lowest volts before the swap.</summary>
public sealed record LampChange
{
    internal LampChange(FittedLamp lamp, bool isReplaced, Setting? setting, LampState? before, LampState? after) =>
        (Lamp, IsReplaced, Setting, Before, After) = (lamp, isReplaced, setting, before, after);

    /// <summary>The lamp as it was fitted.</summary>
    public FittedLamp Lamp { get; }

    /// <summary>Whether the swap replaces it; one that stays may change all the same, with its volts.</summary>
    public bool IsReplaced { get; }

    /// <summary>The setting; null where the lamp is lit in none that was solved for both bikes.</summary>
    public Setting? Setting { get; }

    /// <summary>The lamp before; null with <see cref="Setting"/>.</summary>
    public LampState? Before { get; }

    /// <summary>What stands in its place; null with <see cref="Setting"/>.</summary>
    public LampState? After { get; }

    /// <summary>Light of all of its quantity before, at its volts; null where it is not published.</summary>
    public LuminousFlux? LightBefore => LightOf(Before);

    /// <summary>Light of all of its quantity after, at its volts; null where it is not known.</summary>
    public LuminousFlux? LightAfter => LightOf(After);

    private static LuminousFlux? LightOf(LampState? state) =>
        state is { RelativeLight: { } light } && state.Lamp.Specification.ReferenceFlux is { } flux
            ? LuminousFlux.FromLumens(state.Lamp.Quantity * flux.Lumens * light.DecimalFractions)
            : null;
}
