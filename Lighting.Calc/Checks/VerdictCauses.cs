using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Groups the faults of a report into causes, the most dangerous first: shorts, wires without a fuse or with
/// one too large, overloaded wires, overloaded fuses, the rest, lists that disagree, voltage drop last.</summary>
internal static class VerdictCauses
{
    public static ImmutableArray<VerdictCause> Of(BikeReport report)
    {
        ILookup<string, Finding> ofFuses = report
            .Findings.Where(f => f.Severity == Severity.Fault && report.Fuses.Any(s => s.Fuse.Name == f.Subject))
            .ToLookup(f => f.Subject);
        IEnumerable<(int Rank, IEnumerable<VerdictCause> Causes)> fuses = report
            .Fuses.Where(f => f.Verdict is not (FuseVerdict.Suits or FuseVerdict.NotJudged))
            .Select(f => (f.Verdict == FuseVerdict.Overloaded ? 3 : 1, OfFuse(f, [.. ofFuses[f.Fuse.Name]])));
        HashSet<Finding> told =
        [
            .. report
                .Fuses.Where(f => f.Verdict is not (FuseVerdict.Suits or FuseVerdict.NotJudged))
                .SelectMany(f => ofFuses[f.Fuse.Name]),
        ];
        IEnumerable<(int Rank, IEnumerable<VerdictCause> Causes)> rest = report
            .Findings.Where(f => f.Severity == Severity.Fault && !told.Contains(f))
            .GroupBy(f => f.Kind)
            .Select(g => (Rank(g.Key), (IEnumerable<VerdictCause>)[OfGroup(report, [.. g])]));
        return [.. fuses.Concat(rest).OrderBy(g => g.Rank).SelectMany(g => g.Causes)];
    }

    private static int Rank(FindingKind kind) =>
        kind switch
        {
            FindingKind.DeadShort or FindingKind.FuseBypassed => 0,
            FindingKind.RunUnfused or FindingKind.LampUnfused => 1,
            FindingKind.RunOverloaded => 2,
            FindingKind.LampDark or FindingKind.LampFedUnintended => 5,
            FindingKind.VoltageDropTooLarge => 6,
            _ => 4,
        };

    /// <summary>What is against one fuse; empty where it suits or is not judged.</summary>
    public static ImmutableArray<VerdictCause> Of(FuseSuitability fuse) =>
        fuse.Verdict is FuseVerdict.Suits or FuseVerdict.NotJudged
            ? []
            :
            [
                .. OfFuse(
                    fuse,
                    [.. fuse.Findings.Where(f => f.Severity == Severity.Fault && f.Subject == fuse.Fuse.Name)]
                ),
            ];

    // Each thing that is against a fuse is a cause; the remedy, which answers them all, stands at the first.
    private static IEnumerable<VerdictCause> OfFuse(FuseSuitability fuse, ImmutableArray<Finding> findings)
    {
        string name =
            $"{fuse.Fuse.Name}{(fuse.Fuse.Name.Contains("fuse", StringComparison.OrdinalIgnoreCase) ? "" : " fuse")} "
            + $"{A(fuse.Fuse.Rating)}";
        string[] texts =
        [
            .. findings
                .Where(f => f.Severity == Severity.Fault)
                .DistinctBy(f =>
                    f.Kind == FindingKind.FusePeakTooLarge ? FindingKind.FuseContinuousLoadTooLarge : f.Kind
                )
                .Select(f =>
                    f.Kind switch
                    {
                        FindingKind.WiresRatedBelowFuse => Listed(
                            f.Parts,
                            parts => $"{name}, too large for the wiring: {parts}",
                            $" ({FindingWords.Text(f.Value)})"
                        ),
                        FindingKind.WiresUnratedBehindFuse => Listed(
                            f.Parts,
                            parts => $"{name}, not shown to protect {parts}"
                        ),
                        FindingKind.ShortDoesNotClear => Listed(
                            f.Parts,
                            parts => $"{name}, does not clear a short at the end of {parts}"
                        ),
                        FindingKind.FuseContinuousLoadTooLarge or FindingKind.FusePeakTooLarge =>
                            $"{name}, overloaded: {Load(fuse.Steady)}.",
                        FindingKind.FuseInrushTooLarge => $"{name}, may open on "
                            + $"inrush{(fuse.InrushCheck is { } inrush ? $": {A(inrush.Peak)}" : "")}.",
                        _ => $"{name}: {f.Message}",
                    }
                ),
        ];
        return texts.Select(
            (t, i) => new VerdictCause(Clipped(t), i == 0 ? Remedy(fuse) : null, i == 0 ? findings : [])
        );
    }

    private static string Load(ContinuousLoad load) =>
        load.PeakExceedsRating && load.Headroom.Amperes >= 0
            ? $"peak {A(load.WorstCurrent)} (limit {N(load.PeakLimit)})"
        : load.PeakExceedsRating
            ? $"{A(load.ContinuousCurrent)} (limit {N(load.UsableCurrent)}), peak {A(load.WorstCurrent)} (limit "
                + $"{N(load.PeakLimit)})"
            : $"{A(load.ContinuousCurrent)} continuous (limit {A(load.UsableCurrent)})";

    private static string Remedy(FuseSuitability fuse)
    {
        FuseAdvice advice = fuse.Advice;
        string marked = advice.IsMarkedWithBlowingCurrent ? ", as marked" : "";
        if (advice is { Smallest: { } least, Largest: { } most })
            return most > least ? $"Fit {A(least)} to {A(most)}{marked}." : $"Fit {A(least)}{marked}.";
        if (advice is { WiresKnown: false, Smallest: { } needed })
            return $"Fit {A(needed)}{marked} if every wire behind it is rated for that, or split the load over two "
                + "fuses.";
        string split = FuseAdviser.Reduce(advice, fuse.Steady, fuse.Fuse) is { } reduce
            ? $"{Sentence(reduce)}, or split it over two fuses"
            : "Split the load over two fuses";
        if (advice.UpsizedRuns is [{ FuseOfItsOwn: { } own } only])
            split =
                $"{Sentence(FuseAdviser.OwnFuse(advice, only.Run, own))}; or "
                + $"{char.ToLowerInvariant(split[0])}{split[1..]}";
        string[] larger =
        [
            .. advice.UpsizedRuns.Where(u => u.Wire is not null).Select(u => $"{u.Wire} to '{u.Run.Name}'"),
        ];
        return larger.Length > 0 && advice.MinimumRatingForLoad is { } rating
            ? $"{split}, or fit "
                + $"{string.Join(", ", larger.Take(2))}"
                + $"{(larger.Length > 2 ? $" and larger wire to {larger.Length - 2} more" : "")}, then "
                + $"{A(rating)}{marked}."
            : $"{split}.";
    }

    private static VerdictCause OfGroup(BikeReport report, ImmutableArray<Finding> group)
    {
        Finding worst = group.MaxBy(Excess)!;
        string text = Listed(
            group.OrderByDescending(Excess).Select(f => f.Subject),
            parts => $"{Titled(worst.Code)}: {parts}",
            worst.Value is { } value
                ? $" ({(group.Length > 1 ? "worst " : "")}{FindingWords.Text(value)}"
                    + $"{(worst.Limit is { } limit ? $", limit {FindingWords.Text(limit)}" : "")})"
                : ""
        );
        return new VerdictCause(
            Clipped(text),
            worst.Kind switch
            {
                FindingKind.VoltageDropTooLarge => DropRemedy(report, worst),
                FindingKind.LoadsExceedOutput => LoadRemedy(worst),
                _ => Remedy(worst.Kind),
            },
            group
        );
    }

    private static string? Remedy(FindingKind kind) =>
        kind switch
        {
            FindingKind.RunOverloaded => "Fit a larger wire, or put less load on it.",
            FindingKind.RunUnfused or FindingKind.LampUnfused => "Fit a fuse close to the battery.",
            FindingKind.FuseBypassed => "Take away what joins its two sides.",
            FindingKind.DeadShort => "Remove the short, in the lists or on the bike.",
            FindingKind.LampDark or FindingKind.LampFedUnintended => "Correct 'lit when' or the wiring.",
            FindingKind.NoSwitchList => "List the switches with their contacts.",
            FindingKind.LampOvervoltage or FindingKind.LampBurnsOut =>
                "Fit a regulator that holds less, or lamps for this voltage.",
            FindingKind.DriverDropsOut => "Lose less voltage on the way to it, or fit one that works at less.",
            FindingKind.RelayDoesNotPullIn or FindingKind.RelayChatters =>
                "Feed its coil from before its contact, lose less voltage on the way, or fit one that pulls in at "
                    + "less.",
            FindingKind.RegulatorOverloaded or FindingKind.ShuntLimitExceeded =>
                "Fit a larger one, or one that does not dissipate the surplus.",
            FindingKind.BatteryOvervoltage or FindingKind.ChargingVoltageTooLow =>
                "Measure the voltage at the battery; if it is so, set or renew the regulator.",
            FindingKind.Overcharge => "Fit a regulator.",
            FindingKind.BatteryFlat => "Reduce the load (LED lamps), or charge the battery before the ride.",
            _ => null,
        };

    // Of what can be cleaned or made larger, the two that drop most.
    private static string? DropRemedy(BikeReport report, Finding worst)
    {
        VoltageDropItem[] largest = report.WorstDrops.FirstOrDefault(d => d.Lamp.Lamp.Lamp == worst.Subject)
            is not { } drop
            ? []
            :
            [
                .. drop
                    .Entries.Where(e => e.Kind is not (VoltageDropKind.Battery or VoltageDropKind.Fuse))
                    .OrderByDescending(e => e.Voltage.Volts)
                    .Take(2),
            ];
        return largest.Length == 0
            ? null
            : $"Clean or upsize first, for {worst.Subject}: "
                + $"{string.Join(", ", largest.Select(e => $"{e.Part} {FindingWords.Text(e.Voltage)}"))}.";
    }

    private static string LoadRemedy(Finding finding) =>
        finding is { Value: ElectricCurrent load, Limit: ElectricCurrent most }
            ? $"Take {A(load - most)} off the load (LED lamps), or fit a generator of more output."
            : "Reduce the load (LED lamps), or fit a generator of more output.";

    /// <summary>Value over limit; zero where they are not of one unit.</summary>
    internal static double Excess(Finding finding) =>
        finding is { Value: { } value, Limit: { } limit } && (double)limit.Value != 0 && value.Unit.Equals(limit.Unit)
            ? (double)value.Value / (double)limit.Value
            : 0;

    private static string Titled(string code) => char.ToUpperInvariant(code[0]) + code[1..].Replace('-', ' ');

    // As many parts as the line has room for, and the figure where there is room for it.
    private static string Listed(IEnumerable<string> names, Func<string, string> line, string figure = "")
    {
        string[] all = [.. names.Distinct()];
        for (int shown = all.Length; shown > 1; shown--)
        {
            string text =
                line(string.Join(", ", all[..shown]) + (shown < all.Length ? $" and {all.Length - shown} more" : ""))
                + figure
                + ".";
            if (text.Length <= VerdictCause.LongestText)
                return text;
        }

        string least = line(all.Length == 1 ? all[0] : $"{all[0]} and {all.Length - 1} more");
        return least.Length + figure.Length < VerdictCause.LongestText ? least + figure + "." : least + ".";
    }

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Clipped(string text)
    {
        string sentence = Sentence(text);
        return sentence.Length <= VerdictCause.LongestText
            ? sentence
            : sentence[..(VerdictCause.LongestText - 1)].TrimEnd(' ', ',', ';') + "…";
    }

    private static string N(ElectricCurrent current) =>
        string.Create(CultureInfo.InvariantCulture, $"{current.Amperes:0.##}");

    private static string A(ElectricCurrent current) =>
        string.Create(CultureInfo.InvariantCulture, $"{current.Amperes:0.##} A");
}
