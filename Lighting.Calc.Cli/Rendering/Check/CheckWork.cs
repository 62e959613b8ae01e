using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The causes of a verdict as work, in their order: part, what is now, what is needed, why.</summary>
internal static class CheckWork
{
    // As many names as a line takes; the findings have them all.
    private const int MostNames = 4;

    public static WorkItem[] Of(BikeReport report)
    {
        ImmutableArray<VerdictCause> causes = report.Causes;
        return [.. Enumerable.Range(0, causes.Length).Select(Item)];

        // The further causes of one fuse follow its first, which has all its findings.
        WorkItem Item(int index)
        {
            int first = WorkList.First(causes, index),
                further = index - first;
            return
                first >= 0
                && report.Fuses.FirstOrDefault(f => f.Fuse.Name == causes[first].Findings[0].Subject) is { } fuse
                && FuseKinds(causes[first].Findings) is var kinds
                && further < kinds.Length
                ? OfFuse(
                    fuse,
                    kinds[further],
                    report,
                    further == 0 ? causes[index].Remedy ?? "" : $"The work of {first + 1} remedies this too."
                )
                : OfGroup(causes[index]);
        }
    }

    // As the causes of a fuse are told apart: peak and continuous load are one.
    private static FindingKind[] FuseKinds(ImmutableArray<Finding> findings) =>
        [
            .. findings
                .Select(f =>
                    f.Kind == FindingKind.FusePeakTooLarge ? FindingKind.FuseContinuousLoadTooLarge : f.Kind
                )
                .Distinct(),
        ];

    private static WorkItem OfFuse(FuseSuitability fuse, FindingKind kind, BikeReport report, string needed)
    {
        Finding? finding = report.Findings.FirstOrDefault(f => f.Kind == kind && f.Subject == fuse.Fuse.Name);
        string part = $"{Titled(fuse.Fuse.Name)} {Figures.Rating(fuse.Fuse.Rating)}",
            parts = finding is null ? "" : Names(finding.Parts);
        ContinuousLoad load = fuse.Steady;
        return kind switch
        {
            FindingKind.WiresRatedBelowFuse => new WorkItem(
                part,
                $"Rated {Figures.Rating(fuse.Fuse.Rating)}; wires rated from {FindingWords.Text(finding!.Value)}: "
                    + $"{parts}.",
                needed,
                "Too large for the wiring: an overload or a short overheats these wires before it opens."
            ),
            FindingKind.WiresUnratedBehindFuse => new WorkItem(
                part,
                $"No published rating: {parts}.",
                needed,
                "Nothing shows that it opens before these wires overheat."
            ),
            FindingKind.ShortDoesNotClear => new WorkItem(
                part,
                $"Stays closed, or opens too late, in a dead short at the end of {parts}.",
                needed,
                "The wire burns out in place of the fuse."
            ),
            FindingKind.FuseContinuousLoadTooLarge => new WorkItem(
                part,
                $"{Figures.Amperes(load.ContinuousCurrent)} continuous (limit {Figures.Amperes(load.UsableCurrent)}), "
                    + $"{Figures.Amperes(load.WorstCurrent)} peak (limit {Figures.Amperes(load.PeakLimit)}).",
                needed,
                "Overloaded: it opens while riding, with the lamps on."
            ),
            FindingKind.FuseInrushTooLarge => new WorkItem(
                part,
                fuse.InrushCheck is { } inrush ? $"{Figures.Amperes(inrush.Peak)} in the first instant." : "",
                needed,
                "Inrush: it may open when the lamps are switched on."
            ),
            _ => new WorkItem(part, "", needed, finding?.Message ?? ""),
        };
    }

    private static WorkItem OfGroup(VerdictCause cause)
    {
        ImmutableArray<Finding> findings = cause.Findings;
        Finding worst = findings.MaxBy(VerdictCauses.Excess)!;
        string which = findings.Length > 1 ? "Worst " : "",
            now =
                worst.Value is not { } value ? ""
                : worst.Limit is { } limit && limit.QuantityInfo.Name == value.QuantityInfo.Name
                    ? $"{which}{FindingWords.Text(value)} (limit {FindingWords.Text(limit)})."
                : $"{which}{FindingWords.Text(value)}.";
        string why = worst.Kind switch
        {
            FindingKind.VoltageDropTooLarge => "Too little voltage is left for the light.",
            FindingKind.RunOverloaded => "It carries more than its rating and overheats.",
            FindingKind.RunUnfused or FindingKind.LampUnfused => "No fuse: a short burns out the wire.",
            FindingKind.DeadShort => "The battery is shorted.",
            FindingKind.LampDark or FindingKind.LampFedUnintended =>
                "'lit when' and the wiring contradict each other: see “Your lists disagree”.",
            FindingKind.LampOvervoltage or FindingKind.LampBurnsOut => "It burns out.",
            FindingKind.RegulatorOverloaded => "It makes more heat than it is rated for, and fails.",
            FindingKind.BatteryOvervoltage => "The battery gasses and dries out, and lamps burn out early.",
            _ => findings[0].Message,
        };
        return new WorkItem(
            Titled(Names(findings.OrderByDescending(VerdictCauses.Excess).Select(f => f.Subject))),
            now,
            cause.Remedy ?? "",
            why
        );
    }

    private static string Names(IEnumerable<string> names)
    {
        string[] all = [.. names.Distinct()];
        return all.Length <= MostNames
            ? string.Join(", ", all)
            : $"{string.Join(", ", all.Take(MostNames - 1))} and {all.Length - MostNames + 1} more";
    }

    private static string Titled(string name) =>
        name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];
}
