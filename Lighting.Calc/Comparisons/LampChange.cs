using UnitsNet;

namespace Lighting.Calc;

/// <summary>One fitted lamp before and after, in the lasting setting of its largest voltage drop before
/// the change.</summary>
public sealed record LampChange
{
    internal LampChange(
        FittedLamp? fittedBefore,
        FittedLamp? fittedAfter,
        Setting? setting,
        LampState? before,
        LampState? after
    ) => (FittedBefore, FittedAfter, Setting, Before, After) = (fittedBefore, fittedAfter, setting, before, after);

    /// <summary>The lamp as it was fitted, or, where it was not, as it is after the change.</summary>
    public FittedLamp Lamp => FittedBefore ?? FittedAfter!;

    /// <summary>The lamp before; null where there was none of this name.</summary>
    public FittedLamp? FittedBefore { get; }

    /// <summary>The lamp after; null where there is none of this name.</summary>
    public FittedLamp? FittedAfter { get; }

    /// <summary>Whether another lamp is fitted after the change; one that stays may change all the same, with its
    /// voltage.</summary>
    public bool IsReplaced =>
        FittedBefore?.Specification != FittedAfter?.Specification || FittedBefore?.Quantity != FittedAfter?.Quantity;

    /// <summary>The setting; null where the lamp is lit in none that was solved for both bikes.</summary>
    public Setting? Setting { get; }

    /// <summary>Its state before; null where it is fitted or lit after the change alone.</summary>
    public LampState? Before { get; }

    /// <summary>Its state after; null where it is fitted or lit before the change alone.</summary>
    public LampState? After { get; }

    /// <summary>Light of all of its quantity before, at its voltage; null where it is not published.</summary>
    public LuminousFlux? LightBefore => LightOf(Before);

    /// <summary>Light of all of its quantity after, at its voltage; null where it is not known.</summary>
    public LuminousFlux? LightAfter => LightOf(After);

    private static LuminousFlux? LightOf(LampState? state) =>
        state is { RelativeLight: { } light } && state.Lamp.Specification.ReferenceFlux is { } flux
            ? LuminousFlux.FromLumens(state.Lamp.Quantity * flux.Lumens * light.DecimalFractions)
            : null;
}
