namespace Lighting.Calc;

internal static partial class FindingWords
{
    private static string? OfWiring(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.DeadShort =>
                $"{Bike.BatteryPlus} and {Bike.BatteryMinus} are joined without any resistance{In(finding)}: a dead "
                    + $"short.",
            FindingKind.NoOperatingPoint => $"{finding.Detail}"
                + $"{(finding.FurtherSettings > 0 ? $" The same in {finding.FurtherSettings} more." : "")}",
            FindingKind.LampDark =>
                $"'lit when' says lit{In(finding)}, but the wiring leaves it dark: {finding.Detail}.{Also(finding)}",
            FindingKind.LampInSeries => $"Its current also flows through another lamp{In(finding)}.{Also(finding)}",
            FindingKind.LampFedUnintended =>
                $"'lit when' says dark{In(finding)}, but the wiring feeds it: {finding.Detail}.{Also(finding)}",
            FindingKind.LampUnfused => $"Fed without a fuse{In(finding)}: {finding.Detail}.{Also(finding)}",
            FindingKind.RunUnfused =>
                $"No fuse protects it: the battery feeds it directly{In(finding)}.{Also(finding)}",
            FindingKind.BatteryLead =>
                $"Unfused: battery to first fuse. Keep it short, support it clear of the frame, and mount the fuse as "
                    + $"close to the battery as practicable.{Also(finding)}",
            FindingKind.FuseNotConnected =>
                $"Neither side of the fuse is connected to {finding.Detail}: it feeds nothing.",
            FindingKind.FuseFeedsNothing => "The fuse feeds no lamp or other load.",
            FindingKind.SwitchWithoutContact =>
                "A condition names this switch, but it has no contact: it changes nothing.",
            FindingKind.PositionWithoutContact =>
                $"No contact is closed in the position {Quoted(finding)}: it does what 'off' does.",
            FindingKind.PositionNotNamed => $"No 'lit when' names the position {Quoted(finding)}.",
            FindingKind.PointWithOneConnection =>
                $"Only one part is connected to this point. Check for a missing part or a misspelt "
                    + $"name.{Also(finding)}",
            FindingKind.RelayDoesNotPullIn =>
                $"The relay does not pull in{In(finding)}: {Text(finding.Value)} at its coil, it needs "
                    + $"{Text(finding.Limit)}. It is calculated at rest.",
            FindingKind.RelayChatters =>
                $"The relay chatters{In(finding)}: {finding.Detail} ({Text(finding.Value)} at the coil, it needs "
                    + $"{Text(finding.Limit)}).",
            FindingKind.RelayFedThroughLoad =>
                $"Its coil has {Text(finding.Value)}{In(finding)} through another load and may pull in "
                    + $"({Text(finding.Limit)}); it is calculated at rest.",
            FindingKind.RelayNeverIn => "No setting feeds the coil of this relay: it never pulls in.",
            _ => null,
        };

    private static string Quoted(Finding finding) => string.Join(", ", finding.Parts.Select(p => $"'{p}'"));
}
