namespace Lighting.Calc.Cli.Rendering;

/// <summary>The columns of many bikes: all of them for spreadsheets and programs, the main ones for people.</summary>
internal static class FleetColumns
{
    public static readonly IReadOnlyList<(Column Column, Func<FleetRow, Cell> Cell)> All =
    [
        (new("folder", "folder"), r => new Cell(Path.GetFileName(Path.TrimEndingDirectorySeparator(r.Folder)) is { Length: > 0 } last ? last : r.Folder, r.Folder)),
        (new("bike", "bike"), r => r.Bike),
        (new("verdict", "verdict"), r => Verdict(r.Outcome)),
        (new("faults", "faults", true), r => Count(r, r.Faults)),
        (new("cautions", "cautions", true), r => Count(r, r.Cautions)),
        (new("list cautions", "listCautions", true), r => Count(r, r.ListCautions)),
        (new("total A", "totalCurrentA", true), r => Number(r.TotalAmperes, 2)),
        (new("fuse", "fuse"), r => r.Fuse ?? ""),
        (new("fuse verdict", "fuseVerdict"), r => r.FuseVerdict ?? ""),
        (new("rating A", "ratingA", true), r => CommonBlocks.Rating(r.RatingAmperes)),
        (new("worst A", "worstCurrentA", true), r => Number(r.WorstAmperes, 2)),
        (new("usable A", "usableA", true), r => Number(r.UsableAmperes, 2)),
        (new("smallest A", "smallestRatingA", true), r => CommonBlocks.Rating(r.SmallestAmperes)),
        (new("largest A", "largestRatingA", true), r => CommonBlocks.Rating(r.LargestAmperes)),
        (new("lamp", "worstLamp"), r => r.Lamp ?? ""),
        (new("volts", "voltageV", true), r => Number(r.LampVolts, 2)),
        (new("drop %", "dropPercent", true), r => Number(r.DropPercent, 1)),
        (new("even rpm", "breakEvenRpm", true), r => Number(r.BreakEvenRpm, 0)),
        (new("ride Ah", "netAmpereHours", true), r => Number(r.NetAmpereHours, 2)),
        (new("message", "message"), r => string.Join("; ", r.Messages)),
    ];

    private static readonly HashSet<string> s_forPeople = ["folder", "verdict", "faults", "worstCurrentA", "usableA", "dropPercent", "breakEvenRpm"];

    /// <summary>A table of rows for people, within 80 columns.</summary>
    public static Table Table(IEnumerable<FleetRow> rows)
    {
        (Column Column, Func<FleetRow, Cell> Cell)[] shown = [.. All.Where(c => s_forPeople.Contains(c.Column.Key))];
        return new Table([.. shown.Select(c => c.Column)], [.. rows.Select(r => (IReadOnlyList<Cell>)[.. shown.Select(c => c.Cell(r))])]);
    }

    private static string Verdict(FleetOutcome outcome) => outcome switch
    {
        FleetOutcome.Suits => "suits",
        FleetOutcome.DoesNotSuit => "does not suit",
        FleetOutcome.NotJudged => "not judged",
        FleetOutcome.WrongInput => "wrong input",
        FleetOutcome.ProgramFault => "program fault",
        _ => throw new InvalidOperationException($"Unknown outcome {outcome}."),
    };

    private static Cell Count(FleetRow row, int count) => Number(row.IsChecked ? count : null, 0);

    private static Cell Number(double? value, int decimals) => value is { } known ? Figures.Cell(known, decimals) : new Cell("-", "");
}
