namespace Lighting.Calc;

/// <content>The sentences of fuses and the wires behind them.</content>
internal static partial class FindingWords
{
    private static string? OfFuses(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.FuseContinuousLoadTooLarge =>
                $"Overloaded: {Text(finding.Value)} continuous{In(finding)} (limit {Text(finding.Limit)}).",
            FindingKind.FusePeakTooLarge =>
                $"Overloaded at the peak, momentary loads included: {Text(finding.Value)}{In(finding)} (rating "
                    + $"{Text(finding.Limit)}); {finding.Detail}.",
            FindingKind.FusePeakAboveRating =>
                $"The peak, momentary loads included, is {Text(finding.Value)}{In(finding)}, above the rating of "
                    + $"{Text(finding.Limit)}; {finding.Detail}.",
            FindingKind.FuseInrushTooLarge => $"Inrush current may open it: {finding.Detail}.",
            FindingKind.FuseAgesByInrush =>
                $"Ages by the inrush of lamps that are switched often{In(finding)}: each time {Text(finding.Value)} of "
                    + $"the energy that may melt it (limit {Text(finding.Limit)} for 100,000 times); it is shown to "
                    + $"withstand that {finding.Detail}.",
            FindingKind.WiresRatedBelowFuse =>
                $"Too large for the wiring: it is rated {Text(finding.Limit)}, the smallest wire {Text(finding.Value)} "
                    + $"({finding.Detail}). Wires rated below it: {Names(finding)}.",
            FindingKind.WiresUnratedBehindFuse => $"Not shown to protect {Names(finding)}: {finding.Detail}.",
            FindingKind.CableKindNeeded =>
                $"State the kind of cable ('cable' in runs.csv or bike.csv): as ordinary PVC cable these wires are "
                    + $"rated below the {Text(finding.Limit)} fuse, the smallest {Text(finding.Value)}: "
                    + $"{Names(finding)}.",
            FindingKind.DropLimitNotMet =>
                $"Drops {Text(finding.Value)} of the supply voltage{In(finding)} with these sizes, more than the "
                    + $"{Text(finding.Limit)} allowed: {finding.Detail}.{Also(finding)}",
            FindingKind.CableKindAssumed =>
                $"State the kind of cable ('cable' in runs.csv or bike.csv): rated as in free air; as ordinary PVC "
                    + $"cable these are rated below their fuse or load: {Names(finding)}.",
            FindingKind.PlannedAsOrdinaryCable =>
                $"The kind of cable is not stated{(finding.Parts.IsEmpty ? "" : $" of {Names(finding)}")}: the plan "
                    + "takes it as ordinary PVC cable, the lowest rated. Where it is thin-wall cable, state it "
                    + "('cable' in bike.csv or runs.csv): fewer wires may have to become larger.",
            FindingKind.BundledWiresBelowFuse =>
                $"With every wire of the bundle loaded, these wires are rated below the {Text(finding.Limit)} fuse, "
                    + $"the smallest {Text(finding.Value)}: {Names(finding)}.",
            FindingKind.FuseBypassed =>
                $"Both sides are joined to the battery without a fuse{In(finding)}: a short draws its current past it.",
            FindingKind.ShortDoesNotClear =>
                $"Does not clear a dead short at the end of {Names(finding)}: {finding.Detail}.",
            FindingKind.ShortNotShownToClear =>
                $"Not shown to protect the wires in a dead short at the end of {Names(finding)}: {finding.Detail}.",
            FindingKind.RunOverloaded =>
                $"Carries {Text(finding.Value)}{In(finding)}, more than its rating of {Text(finding.Limit)}: "
                    + $"{finding.Detail}.",
            FindingKind.RunFedByTwoFuses =>
                $"'{finding.Parts[0]}' is fed through '{finding.Parts[1]}' too: a fault in it may draw what both fuses "
                    + $"pass together.",
            FindingKind.FuseNotJudged => "No setting joins it to the battery: its load and its wires are not judged.",
            FindingKind.FuseWiresNotListed =>
                "The wires are not listed: whether it protects them and clears a short is not judged.",
            FindingKind.FuseMarkedWithBlowingCurrent =>
                $"Marked with its blowing current: {Text(finding.Value)} marked is {Text(finding.Limit)} continuous.",
            FindingKind.FuseResistanceUnknown =>
                "Its resistance is neither listed nor published; the short-circuit current is calculated without it.",
            FindingKind.ShortReturnUnknown =>
                $"The return path of a short on {Names(finding)} is not defined by any lamp; the frame is taken as "
                    + $"0 Ω.",
            FindingKind.InrushNotJudged =>
                $"Whether it withstands the {Text(finding.Value)} inrush is unknown: minimum opening times are not "
                    + $"published for {finding.Detail} fuses.",
            FindingKind.FuseWithoutCurrent => "Carries no current in any of these settings.",
            FindingKind.FuseLoadFactorUnusual => $"Judged at {Text(finding.Value)} of its rating; 75 % is usual.",
            _ => null,
        };

    private static string Names(Finding finding) => string.Join(", ", finding.Parts.Select(p => $"'{p}'"));
}
