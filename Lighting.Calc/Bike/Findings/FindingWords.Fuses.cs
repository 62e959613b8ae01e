namespace Lighting.Calc;

/// <content>The sentences of fuses and the wires behind them.</content>
internal static partial class FindingWords
{
    private static string? OfFuses(Finding finding) => finding.Kind switch
    {
        FindingKind.FuseContinuousLoadTooLarge => $"Overloaded: {Text(finding.Value)} continuous{In(finding)} (limit {Text(finding.Limit)}).",
        FindingKind.FusePeakTooLarge => $"Overloaded at the peak, momentary loads included: {Text(finding.Value)}{In(finding)} (rating {Text(finding.Limit)}); {finding.Detail}.",
        FindingKind.FusePeakAboveRating => $"The peak, momentary loads included, is {Text(finding.Value)}{In(finding)}, above the rating of {Text(finding.Limit)}; {finding.Detail}.",
        FindingKind.FuseInrushTooLarge => $"Inrush current may open it: {finding.Detail}.",
        FindingKind.WiresRatedBelowFuse => $"Too large for the wiring: it is rated {Text(finding.Limit)}, the smallest wire {Text(finding.Value)} ({finding.Detail}). Wires rated below it: {Names(finding)}.",
        FindingKind.WiresUnratedBehindFuse => $"Not shown to protect {Names(finding)}: {finding.Detail}.",
        FindingKind.CableKindNeeded => $"State the kind of cable ('cable' in runs.csv or bike.csv): as ordinary PVC cable these wires are rated below the {Text(finding.Limit)} fuse, the smallest {Text(finding.Value)}: {Names(finding)}.",
        FindingKind.BundledWiresBelowFuse => $"With every wire of the bundle loaded, these wires are rated below the {Text(finding.Limit)} fuse, the smallest {Text(finding.Value)}: {Names(finding)}.",
        FindingKind.FuseBypassed => $"Both sides are joined to the battery without a fuse{In(finding)}: a short draws its current past it.",
        FindingKind.ShortDoesNotClear => $"Does not clear a dead short at the end of {Names(finding)}: {finding.Detail}.",
        FindingKind.ShortNotShownToClear => $"Not shown to protect the wires in a dead short at the end of {Names(finding)}: {finding.Detail}.",
        _ => null,
    };

    private static string Names(Finding finding) => string.Join(", ", finding.Parts.Select(p => $"'{p}'"));
}
