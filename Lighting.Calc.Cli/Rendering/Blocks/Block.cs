namespace Lighting.Calc.Cli.Rendering;

/// <summary>One part of a document.</summary>
internal abstract record Block;

/// <summary>A heading over what follows.</summary>
internal sealed record Heading(string Text) : Block;

/// <summary>A paragraph.</summary>
internal sealed record Paragraph(string Text) : Block;

/// <summary>What to beware of in what follows.</summary>
/// <param name="Texts">A sentence or two each.</param>
internal sealed record CautionList(IReadOnlyList<string> Texts) : Block;

/// <summary>Large figures beside each other, each with its limit.</summary>
internal sealed record KeyFigures(IReadOnlyList<KeyFigure> Figures) : Block;

/// <summary>A large figure.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Value">The figure with its unit.</param>
/// <param name="Limit">Its limit, or what else belongs to it.</param>
/// <param name="Outcome">How it turns out.</param>
/// <param name="Reason">Why, where the verdict alone does not say so.</param>
internal sealed record KeyFigure(string Title, string Value, string Limit, BikeVerdict Outcome, string? Reason = null);

/// <summary>Causes with their remedies, the most urgent first; on a page each has a box to tick.</summary>
internal sealed record WorkList(IReadOnlyList<VerdictCause> Causes) : Block
{
    /// <summary>The same as a page has it: part, what is, what is needed and why.</summary>
    public IReadOnlyList<WorkItem> Items { get; init; } = [];

    /// <summary>How many of them a printed sheet has room for; the others follow on a later one.</summary>
    public int PrintedItems { get; init; } = int.MaxValue;

    /// <summary>The number of the first of them.</summary>
    public int Start { get; init; } = 1;

    /// <summary>In text: the number of each cause with its words, and under it what remedies it.</summary>
    public IEnumerable<(string Mark, string Text)> Lines =>
        Causes
            .Index()
            .SelectMany(c =>
                new (string Mark, string? Text)[] { ($"{c.Index + 1}", c.Item.Text), ("", RemedyOf(c.Index)) }
            )
            .Where(l => l.Text is not null)!;

    // What answers all that is against a fuse stands at the first of it.
    private string? RemedyOf(int cause) =>
        Causes[cause].Remedy is { } remedy ? remedy
        : Causes[cause].Findings.IsEmpty && First(Causes, cause) is >= 0 and var first
            ? $"The remedy of {first + 1} answers this too."
        : null;

    /// <summary>The cause that has the findings of one: itself, or the first of its fuse; −1 where none has.</summary>
    public static int First(IReadOnlyList<VerdictCause> causes, int cause)
    {
        int first = cause;
        while (first >= 0 && causes[first].Findings.IsEmpty)
            first--;
        return first;
    }
}

/// <summary>One piece of work.</summary>
/// <param name="Part">The part.</param>
/// <param name="Now">What it is or does now, with its limit.</param>
/// <param name="Needed">What is needed.</param>
/// <param name="Why">Why it matters.</param>
internal sealed record WorkItem(string Part, string Now, string Needed, string Why);

/// <summary>Lines that open: what the line says in short, the rest on demand. On a page only.</summary>
/// <param name="Lines">Each line, and what opens under it; null where nothing does.</param>
internal sealed record OpeningLines(IReadOnlyList<(string Line, string? More)> Lines) : Block;

/// <summary>What a printed sheet has and a screen does not, since it shows the same in one place.</summary>
internal sealed record PrintOnly(IReadOnlyList<Block> Blocks) : Block;

/// <summary>What a screen shows and a printed sheet leaves out, since a table beside it says the same.</summary>
internal sealed record ScreenOnly(IReadOnlyList<Block> Blocks) : Block;

/// <summary>A table.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, one cell for each column.</param>
/// <param name="IsMain">Whether it is the one that CSV gives.</param>
internal sealed record Table(
    IReadOnlyList<Column> Columns,
    IReadOnlyList<IReadOnlyList<Cell>> Rows,
    bool IsMain = false
) : Block
{
    /// <summary>Rows that a page shows at once; the rest opens on request. Null shows all.</summary>
    public int? ShownRows { get; init; }

    /// <summary>Whether a page sets it in columns where it has room: for narrow, long tables.</summary>
    public bool IsInColumns { get; init; }
}

/// <summary>A table that is too long for a page: only CSV gives it, as the main one.</summary>
internal sealed record SpreadsheetOnly(Table Table) : Block;

/// <summary>A column of a table.</summary>
/// <param name="Title">Its heading for people.</param>
/// <param name="Key">Its heading in CSV, with the unit; a column with neither is for text alone.</param>
/// <param name="IsNumber">Whether it is set to the right.</param>
internal sealed record Column(string Title, string Key, bool IsNumber = false);

/// <summary>Blocks that stand beside each other where a page has room, and under each other where it has not.</summary>
internal sealed record SideBySide(IReadOnlyList<Block> Blocks) : Block
{
    /// <summary>Whether the first needs less room than the second.</summary>
    public bool IsFirstNarrow { get; init; }
}

/// <summary>What only a page in a browser gives; text and CSV leave it out, and it is not made for them.</summary>
/// <param name="Blocks">Makes its blocks; null where there is nothing to show.</param>
internal sealed record PageOnly(Func<IEnumerable<Block?>> Blocks) : Block
{
    /// <summary>A document's blocks as a page has them.</summary>
    public static IEnumerable<Block> Shown(IEnumerable<Block> blocks) =>
        blocks.SelectMany(b => b is PageOnly only ? only.Blocks().OfType<Block>() : [b]);
}
