using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp's worst drop before and after.</summary>
public sealed record LampSizing
{
    /// <summary>The lamp.</summary>
    public required FittedLamp Lamp { get; init; }

    /// <summary>The drop allowed, as a share of the source voltage; null where none limits it.</summary>
    public required Ratio? AllowedDrop { get; init; }

    /// <summary>Worst drop with the wires as fitted; null where no setting joins it to the battery.</summary>
    public required Ratio? DropFitted { get; init; }

    /// <summary>The setting of it.</summary>
    public required Setting? SettingFitted { get; init; }

    /// <summary>Worst drop with the wires as chosen; null where none were, or as <see cref="DropFitted"/>.</summary>
    public required Ratio? DropChosen { get; init; }

    /// <summary>The setting of it.</summary>
    public required Setting? SettingChosen { get; init; }
}
