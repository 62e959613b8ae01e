using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp's worst drop before and after.</summary>
internal sealed record LampSizing
{
    internal LampSizing() { }

    /// <summary>The lamp.</summary>
    public FittedLamp Lamp { get; internal init; } = null!;

    /// <summary>The drop allowed, as a share of the source voltage; null where none limits it.</summary>
    public Ratio? AllowedDrop { get; internal init; }

    /// <summary>Worst drop with the wires as fitted; null where no setting joins it to the battery.</summary>
    public Ratio? DropFitted { get; internal init; }

    /// <summary>The setting of it.</summary>
    public Setting? SettingFitted { get; internal init; }

    /// <summary>Worst drop with the wires as chosen; null where none were, or as <see cref="DropFitted"/>.</summary>
    public Ratio? DropChosen { get; internal init; }

    /// <summary>The setting of it.</summary>
    public Setting? SettingChosen { get; internal init; }
}
