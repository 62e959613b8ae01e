using UnitsNet;

namespace Lighting.Calc;

/// <summary>One fitted lamp before and after, in the setting of its lowest volts before the swap.</summary>
/// <param name="Lamp">The lamp as it was fitted.</param>
/// <param name="IsReplaced">Whether the swap replaces it; one that stays may change all the same, with its volts.</param>
/// <param name="Setting">The setting; null where the lamp is lit in none that was solved for both bikes.</param>
/// <param name="Before">The lamp before; null with <paramref name="Setting"/>.</param>
/// <param name="After">What stands in its place; null with <paramref name="Setting"/>.</param>
public sealed record LampChange(FittedLamp Lamp, bool IsReplaced, Setting? Setting, LampState? Before, LampState? After)
{
    /// <summary>Light of all of its quantity before, at its volts; null where it is not published.</summary>
    public LuminousFlux? LightBefore => LightOf(Before);

    /// <summary>Light of all of its quantity after, at its volts; null where it is not known.</summary>
    public LuminousFlux? LightAfter => LightOf(After);

    private static LuminousFlux? LightOf(LampState? state) => state is { RelativeLight: { } light } && state.Lamp.Specification.ReferenceFlux is { } flux
        ? LuminousFlux.FromLumens(state.Lamp.Quantity * flux.Lumens * light.DecimalFractions)
        : null;
}
