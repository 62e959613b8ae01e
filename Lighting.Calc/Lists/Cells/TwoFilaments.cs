namespace Lighting.Calc;

/// <summary>Refuses a row that gives a lamp of two filaments, with the two rows to write instead: each filament is a
/// load of its own.</summary>
internal static class TwoFilaments
{
    private const string Remedy = "write these two rows, each with its own 'lit when' or 'feed'";

    private static readonly string[] s_rearWords = ["stop", "brake", "tail", "rear"];

    /// <summary>Logs a fault where the watts of a row are those of two filaments, such as <c>100/90</c>.</summary>
    /// <param name="row">A row of lamps or of swaps.</param>
    /// <param name="codeColumn">The column of the code, which is <c>code</c> in a list of lamps.</param>
    /// <returns>Whether they are.</returns>
    public static bool Refuse(ListRow row, string codeColumn)
    {
        if (row.Text("watts") is not { } text || text.Split('/') is not [var first, var second])
            return false;
        if (!IsWatts(first) || !IsWatts(second))
            return false;
        const string problem = "is the watts of two filaments: two rows";
        if (codeColumn != "code")
        {
            row.Fault("watts", text, problem, "write a row for the lamp of each filament");
            return true;
        }

        (string major, string minor) = Names(row.Text("lamp") ?? "lamp");
        row.Replace(
            "watts",
            text,
            problem,
            Remedy,
            [
                row.With(("lamp", major), ("watts", first.Trim())),
                row.With(("lamp", minor), ("watts", second.Trim())),
            ]
        );
        return true;
    }

    /// <summary>Logs a fault where words mean both filaments of a lamp, such as <c>stop and tail 21/5</c>.</summary>
    /// <param name="row">A row of lamps or of swaps.</param>
    /// <param name="codeColumn">The column of the code.</param>
    /// <param name="filaments">The two filaments, the brighter one first.</param>
    public static void Refuse(ListRow row, string codeColumn, IReadOnlyList<PublishedLamp> filaments)
    {
        const string problem = "is a lamp of two filaments: two rows";
        string text = row.Text(codeColumn)!;
        if (codeColumn != "code")
        {
            row.Fault(codeColumn, text, problem, null, [.. filaments.Select(f => f.Code)]);
            return;
        }

        string name = row.Text("lamp") ?? "lamp";
        (string major, string minor) = filaments[0].Filament == "high" ? Beams(name) : Names(name);
        row.Replace(
            codeColumn,
            text,
            problem,
            Remedy,
            [
                row.With(("lamp", major), (codeColumn, filaments[0].Code)),
                row.With(("lamp", minor), (codeColumn, filaments[1].Code)),
            ]
        );
    }

    private static bool IsWatts(string text) => CellRanges.LampWatts.TryParse(text, out _, out _);

    // The names of the two: stop and tail lamp where the name is that of a rear lamp, else the two beams.
    private static (string Major, string Minor) Names(string name) =>
        Array.Exists(s_rearWords, w => name.Contains(w, StringComparison.OrdinalIgnoreCase))
            ? ("stop lamp", "tail lamp")
            : Beams(name);

    private static (string Major, string Minor) Beams(string name) => ($"{name} high", $"{name} low");
}
