namespace Lighting.Calc;

/// <summary>The verdict of <c>check</c> in at most three lines of 80 columns: the verdict, the gravest causes, or what
/// it rests on.</summary>
internal static class CheckHeadline
{
    // The sign stands before the first line.
    private const int Columns = 78;

    public static string Of(BikeReport report) =>
        string.Join(
            "\n",
            report.Verdict switch
            {
                BikeVerdict.DoesNotSuit => Causes(report),
                BikeVerdict.NotJudged => NotJudged(report),
                _ => Suits(report),
            }
        );

    /// <summary>What is in order, without a full stop; empty where nothing is.</summary>
    public static string Suitable(BikeReport report)
    {
        var parts = new List<string>();
        FuseSuitability[] fuses = [.. report.Fuses.Where(f => f.Verdict == FuseVerdict.Suits)];
        if (fuses.Length > 0)
            parts.Add($"fuses {string.Join(", ", fuses.Select(f => f.Fuse.Name))}");
        int lamps = report.Bike.HasNetwork
            ? report.WorstDrops.Count(d =>
                !DropLimit.Of(report.Bike, d.Lamp.Lamp, d.SupplyVoltage).IsExceededBy(d.Lamp.Drop!.Value)
            )
            : 0;
        if (lamps > 0)
            parts.Add(
                lamps == report.WorstDrops.Length
                    ? "voltage drop of every lamp"
                    : $"voltage drop of {lamps} of {report.WorstDrops.Length} lamps"
            );
        if (report.Charging?.Worst is { BreakEven.Outcome: BreakEvenOutcome.At or BreakEvenOutcome.Always } charging)
            parts.Add($"charging {BreakEvenWords.Of(charging.BreakEven)}");
        return string.Join("; ", parts);
    }

    private static IEnumerable<string> Causes(BikeReport report)
    {
        int count = report.Causes.Length;
        yield return $"Does not suit: {(count == 1 ? "1 cause" : $"{count} causes")}.";
        foreach ((int index, VerdictCause cause) in report.Causes.Take(2).Index())
            yield return $"{index + 1}  {cause.Text}";
        if (count == 1 && report.Causes[0].Remedy is { Length: <= VerdictCause.LongestText } remedy)
            yield return $"   {remedy}";
    }

    // A sentence that has no room stands below, under what was not judged.
    private static IEnumerable<string> NotJudged(BikeReport report)
    {
        string[] sentences = [.. string.Join(" ", report.NotJudged).Split(". ").Select(s => s.TrimEnd('.') + ".")];
        yield return Fitting($"Not judged: {sentences[0]}");
        if (sentences.Length > 1)
            yield return Fitting(sentences[1]);
        if (report.Fuses.IsEmpty && report.Bike is { Lighting: LightingSupply.Battery })
            yield return "Give the fuse with --fuse 15A or in fuses.csv.";
    }

    private static IEnumerable<string> Suits(BikeReport report)
    {
        string[] missing =
        [
            .. report.Bike.HasNetwork ? Array.Empty<string>() : ["wires", "voltage drop"],
            .. report.Bike.Charging.IsEmpty ? ["charging"] : Array.Empty<string>(),
        ];
        string suits = report.When.Terms.IsEmpty ? "Suits" : Fitting($"Suits with '{report.When}', no other judged");
        yield return missing.Length == 0
            ? $"{suits}."
            : Fitting($"{suits} as far as listed. Not listed: {string.Join(", ", missing)}.");
        VoltageDropBreakdown? drop = report.Bike.HasNetwork
            ? report.WorstDrops.MaxBy(d => d.Lamp.Drop!.Value.DecimalFractions)
            : null;
        if (report.Fuses.MinBy(f => f.Steady.Headroom.Amperes) is { } fuse)
        {
            ContinuousLoad load = fuse.Steady;
            string peak =
                load.WorstCurrent > load.ContinuousCurrent ? $", {PlainFigures.Amperes(load.WorstCurrent)} peak" : "";
            yield return Fitting(
                $"{PlainFigures.Rating(fuse.Fuse.Rating)} {fuse.Fuse.Name}: "
                    + $"{PlainFigures.Amperes(load.ContinuousCurrent)} continuous "
                    + $"(limit {PlainFigures.Amperes(load.UsableCurrent)}){peak}"
                    + $"{(report.Fuses.Length > 1 ? ", the least headroom" : "")}."
            );
        }
        else if (report.DirectLighting is { } direct)
            yield return Fitting($"Lighting coil: {RangeOf(direct)}.");
        if (report.Bike.CountsAllLampsTogether)
            yield return "No 'lit when' is listed: every lamp counts as on.";
        else if (drop is not null || report.Charging?.Worst is not null)
        {
            string largest = drop is null
                ? ""
                : $"Largest voltage drop: {drop.Lamp.Lamp.Lamp} {PlainFigures.Percent(drop.Lamp.Drop!.Value)}. ";
            string covered = report.Charging?.Worst is { } charging
                ? $"Load covered {BreakEvenWords.Of(charging.BreakEven)}."
                : "";
            yield return Fitting((largest + covered).Trim());
        }
    }

    /// <summary>The terminal voltage of direct lighting at the lowest and the highest speed.</summary>
    public static string RangeOf(DirectLightingReport report) =>
        $"{PlainFigures.Volts(report.Points[0].TerminalVoltage)} at {PlainFigures.Rpm(report.Points[0].Speed)}, "
        + $"{PlainFigures.Volts(report.Points[^1].TerminalVoltage)} at {PlainFigures.Rpm(report.Points[^1].Speed)}";

    private static string Fitting(string line) =>
        line.Length <= Columns ? line : line[..(Columns - 1)].TrimEnd(' ', ',', ';') + "…";
}
