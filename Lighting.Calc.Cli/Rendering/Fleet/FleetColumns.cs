namespace Lighting.Calc.Cli.Rendering;

/// <summary>The columns of many bikes: all of them for spreadsheets and programs, the main ones for people.</summary>
internal static class FleetColumns
{
    public static readonly Columns<FleetRow> All = new()
    {
        {
            "folder",
            "folder",
            r => new Cell(
                VisibleText.Of(
                    Path.GetFileName(Path.TrimEndingDirectorySeparator(r.Folder)) is { Length: > 0 } last
                        ? last
                        : r.Folder
                ),
                r.Folder
            )
        },
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
