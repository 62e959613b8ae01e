namespace Lighting.Calc.Cli.Rendering;

/// <summary>The columns of many bikes: all of them for spreadsheets and programs, the main ones for people.</summary>
internal static class FleetColumns
{
    public static readonly Columns<FleetRow> All = new()
    {
        { "folder", "folder", r => FolderCell(r) },
        { "bike", "bike", r => Given(r.Bike) },
        { "verdict", "verdict", r => Verdict(r.Outcome) },
        { "faults", "faults", r => Count(r, r.Faults) },
        { "cautions", "cautions", r => Count(r, r.Cautions) },
        { "list cautions", "listCautions", r => Count(r, r.ListCautions) },
        { "total A", "totalCurrentA", r => r.TotalAmperes },
        { "fuse", "fuse", r => Given(r.Fuse) },
        { "fuse verdict", "fuseVerdict", r => r.FuseVerdict },
        { "rating A", "ratingA", r => r.RatingAmperes, Figures.Rated },
        { "load A", "continuousCurrentA", r => r.ContinuousAmperes },
        { "limit A", "usableA", r => r.UsableAmperes },
        { "smallest A", "smallestRatingA", r => r.SmallestAmperes, Figures.Rated },
        { "largest A", "largestRatingA", r => r.LargestAmperes, Figures.Rated },
        { "lamp", "worstLamp", r => Given(r.Lamp) },
        { "lamp V", "voltageV", r => r.LampVolts },
        { "drop %", "dropPercent", r => r.DropPercent, "F1" },
        { "even rpm", "breakEvenRpm", r => r.BreakEvenRpm, "F0" },
        { "ride Ah", "netAmpereHours", r => r.NetAmpereHours },
        { "message", "message", r => Given(string.Join("; ", r.Messages)) },
    };

    /// <summary>The columns for people, within 80 columns of letters.</summary>
    public static readonly Columns<FleetRow> ForPeople = All.Only(
        "folder",
        "verdict",
        "faults",
        "continuousCurrentA",
        "usableA",
        "dropPercent",
        "breakEvenRpm"
    );

    /// <summary>The columns of a page: the bike's name with its folder, limits beside figures, and why.</summary>
    public static readonly Columns<FleetRow> OfPage = new()
    {
        { "bike", "bike", r => r.Bike.Length == 0 ? Folder(r) : $"{VisibleText.Of(r.Bike)}\n{Folder(r)}" },
        { "verdict", "verdict", r => Verdict(r.Outcome) },
        { "faults", "faults", r => Count(r, r.Faults) },
        {
            "load A",
            "continuousCurrentA",
            r => ((Cell)r.ContinuousAmperes).Beyond(r.ContinuousAmperes > r.UsableAmperes + 1e-9)
        },
        { "limit A", "usableA", r => r.UsableAmperes },
        {
            "drop %",
            "dropPercent",
            r => ((Cell)r.DropPercent).In("F1").Beyond(r.DropPercent > r.AllowedDropPercent + 1e-9)
        },
        { "limit %", "allowedDropPercent", r => r.AllowedDropPercent, "F1" },
        { "covered from rpm", "breakEvenRpm", r => r.BreakEvenRpm, "F0" },
        { "gravest", "message", r => r.Cause ?? Given(string.Join("; ", r.Messages)) },
    };

    /// <summary>The columns of bikes that could not be checked.</summary>
    public static readonly Columns<FleetRow> OfFailures = new()
    {
        { "folder", "folder", r => Folder(r) },
        { "why it was not checked", "message", r => string.Join("\n", r.Messages) },
    };

    private static Cell FolderCell(FleetRow row) =>
        new(
            VisibleText.Of(
                Path.GetFileName(Path.TrimEndingDirectorySeparator(row.Folder)) is { Length: > 0 } last
                    ? last
                    : row.Folder
            ),
            row.Folder
        );

    private static string Folder(FleetRow row) => FolderCell(row).Text;

    private static string Verdict(FleetOutcome outcome) =>
        outcome switch
        {
            FleetOutcome.Suits => "suits",
            FleetOutcome.DoesNotSuit => "does not suit",
            FleetOutcome.NotJudged => "not judged",
            FleetOutcome.WrongInput => "wrong input",
            FleetOutcome.ProgramFault => "program fault",
            _ => throw new InvalidOperationException($"Unknown outcome {outcome}."),
        };

    private static string? Given(string? text) => string.IsNullOrEmpty(text) ? null : text;

    private static Cell Count(FleetRow row, int count) => Figures.Cell(row.IsChecked ? count : null, 0);
}
