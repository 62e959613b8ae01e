using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One distinct state of the contacts.</summary>
/// <param name="Setting">The first setting of this state.</param>
/// <param name="IsLimited">For each lamp whether wires and closed contacts alone join it to both terminals, the right
/// way round: only then is its drop limited.</param>
internal sealed record SizingState(Setting Setting, ImmutableArray<bool> IsLimited)
{
    public static ImmutableArray<SizingState> Of(SettingGroups groups) =>
        [
            .. groups.First.Select(
                (setting, g) => new SizingState(setting, [.. groups.Graph.Lamps.Select(l => groups.IsFed(l.Index, g))])
            ),
        ];
}
