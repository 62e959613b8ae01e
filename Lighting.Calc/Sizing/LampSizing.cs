using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp's worst drop before and after, as a share of the source voltage.</summary>
/// <param name="Lamp">The lamp.</param>
/// <param name="AllowedDrop">The drop allowed; null where none limits it.</param>
/// <param name="DropFitted">With the wires as fitted; null where no setting joins it to the battery.</param>
/// <param name="DropChosen">With the wires as chosen; null where none were, or as <see cref="DropFitted"/>.</param>
internal sealed record LampSizing(FittedLamp Lamp, Ratio? AllowedDrop, Ratio? DropFitted, Ratio? DropChosen);
