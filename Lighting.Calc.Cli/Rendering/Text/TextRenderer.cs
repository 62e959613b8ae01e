using System.Text;
using Spectre.Console;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A document as text: aligned tables, at most 80 columns when not on a terminal, colour only on one and
/// beside a word or sign.</summary>
internal static class TextRenderer
{
    private const int PlainWidth = 80;

    // Names stay on one line where a page has room for them.
    private const int LongestUnwrapped = 24;

    public static void Render(Document document, TextWriter output, bool isTerminal)
    {
        bool colour = isTerminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        var text = new StringWriter();
        IAnsiConsole console = AnsiConsole.Create(
            new AnsiConsoleSettings
            {
                Ansi = colour ? AnsiSupport.Yes : AnsiSupport.No,
                ColorSystem = colour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
                Interactive = InteractionSupport.No,
                Out = new AnsiConsoleOutput(text),
            }
        );
        console.Profile.Width = isTerminal ? Math.Max(PlainWidth, Console.WindowWidth) : PlainWidth;
        console.Profile.Capabilities.Unicode = true;
        var bold = new Style(decoration: Decoration.Bold);
        console.Write(new Text(document.Title + "\n", bold));
        (string head, string rest) = document.SignedVerdict.Split('\n', 2) is [var first, var more]
            ? (first, more + "\n")
            : (document.SignedVerdict, "");
        console.Write(
            new Text(
                head + "\n",
                document.Outcome is { } outcome
                    ? new Style(ColourOf(outcome), decoration: Decoration.Bold)
                    : Style.Plain
            )
        );
        console.Write(new Text(rest));
        if (document.Cautions is { } cautions)
            Write(console, Marked(cautions), gap: 1);
        foreach (Block block in document.Blocks())
        {
            switch (block)
            {
                case SpreadsheetOnly or PageOnly:
                    break;
                case BarChart bars:
                    console.Write(new Text("\n" + TextBars.Of(bars)));
                    break;
                case Heading heading:
                    console.Write(new Text($"\n{heading.Text}\n", bold));
                    break;
                case WorkList work:
                    Write(console, work.Lines.Select(l => (new Text(l.Mark), l.Text)), gap: 2);
                    break;
                case Paragraph paragraph:
                    console.Write(new Text($"\n{paragraph.Text}\n"));
                    break;
                case CautionList step:
                    Write(console, Marked(step), gap: 1);
                    break;
                case Table table when !colour && Plain(table, console.Profile.Width) is { } lines:
                    text.Write(lines);
                    break;
                case Table table:
                    console.Write(Laid(table, console.Profile.Width));
                    break;
                default:
                    throw new InvalidOperationException($"No text form for {block.GetType().Name}.");
            }
        }

        Trimmed(text.ToString(), output);
    }

    private static Color ColourOf(BikeVerdict outcome) =>
        outcome switch
        {
            BikeVerdict.Suits => Color.Green,
            BikeVerdict.DoesNotSuit => Color.Red,
            _ => Color.Yellow,
        };

    // A severity or a verdict is a word already; the colour only makes it found sooner.
    private static Style StyleOf(Column column, Cell cell) =>
        (column.Key, cell.Text) switch
        {
            ("severity", "fault") => new Style(Color.Red),
            ("severity", "caution") => new Style(Color.Yellow),
            ("verdict", _) => new Style(
                ColourOf(
                    cell.Text is "suits" ? BikeVerdict.Suits
                    : cell.Text is "not judged" ? BikeVerdict.NotJudged
                    : BikeVerdict.DoesNotSuit
                )
            ),
            _ => Style.Plain,
        };

    private static IEnumerable<(Text Mark, string Text)> Marked(CautionList cautions) =>
        cautions.Texts.Select(c => (new Text("!", new Style(Color.Yellow)), c));

    // What runs over a line goes on under its beginning.
    private static void Write(IAnsiConsole console, IEnumerable<(Text Mark, string Text)> lines, int gap)
    {
        var list = new Grid()
            .AddColumn(new GridColumn { NoWrap = true, Padding = new Padding(0, 0, gap, 0) })
            .AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
        foreach ((Text mark, string text) in lines)
            list.AddRow(mark, new Text(text));
        console.Write(new Text("\n"));
        console.Write(list);
    }

    // The table library pads every line, and frames each table in blank lines.
    private static void Trimmed(string text, TextWriter output)
    {
        bool wasBlank = true;
        foreach (string line in text.TrimEnd().Split('\n'))
        {
            string trimmed = line.TrimEnd();
            if (trimmed.Length > 0 || !wasBlank)
                output.WriteLine(trimmed);
            wasBlank = trimmed.Length == 0;
        }
    }

    // A table as Laid would give it without colour: the library measures each word several times over, which for tens
    // of thousands of lines takes seconds. Null where it needs the library: no word is broken, and letters have one
    // width.
    private static string? Plain(Table table, int room)
    {
        if (table.Columns.Count == 0 || table.Rows.Count == 0)
            return null;
        (int?[] given, int gap) = Widths(table, room);
        int[] widths = [.. given.Select((w, i) => w ?? Longest(table, i, '\n'))];
        if (1 + widths.Sum(w => w + 1 + gap) > room)
            return null;
        var lines = new StringBuilder("\n");
        foreach (
            (int number, IEnumerable<string> row) in table
                .Rows.Select(r => r.Select(c => c.Text))
                .Prepend(table.Columns.Select(c => c.Title))
                .Index()
        )
        {
            List<string>?[] cells = [.. row.Select((text, i) => Wrapped(text, widths[i]))];
            if (cells.Contains(null))
                return null;
            for (int line = 0; line < cells.Max(c => c!.Count); line++)
            {
                for (int i = 0; i < cells.Length; i++)
                {
                    string text = cells[i]!.ElementAtOrDefault(line) ?? "";
                    lines
                        .Append(' ')
                        .Append(table.Columns[i].IsNumber ? text.PadLeft(widths[i]) : text.PadRight(widths[i]))
                        .Append(' ', gap);
                }

                lines.Append('\n');
            }

            if (number == 0)
                lines.Append(' ').Append('-', widths.Sum(w => w + gap + 1) - 1).Append('\n');
        }

        return lines.Append('\n').ToString();
    }

    // As many words on each line as have room; null where one is broken, or a letter may be wider than others.
    private static List<string>? Wrapped(string text, int width)
    {
        if (text.Any(c => c is < ' ' or > '\u02FF'))
            return null;
        if (text.Length <= width)
            return [text];
        var lines = new List<string>();
        for (int start = 0; start < text.Length;)
        {
            int end = text.Length - start <= width ? text.Length : text.LastIndexOf(' ', start + width, width + 1);
            if (end <= start)
                return null;
            // The space stays where it has room, also at the end of a line that is set to the right.
            lines.Add(text[start..Math.Min(Math.Min(end + 1, start + width), text.Length)]);
            start = end + 1;
        }

        return lines;
    }

    private static Spectre.Console.Table Laid(Table table, int room)
    {
        var laid = new Spectre.Console.Table { Border = new PlainBorder(), ShowRowSeparators = false };
        (int?[] widths, int gap) = Widths(table, room);
        for (int i = 0; i < table.Columns.Count; i++)
        {
            Column column = table.Columns[i];
            laid.AddColumn(
                new TableColumn(new Text(column.Title))
                {
                    Alignment = column.IsNumber ? Justify.Right : Justify.Left,
                    Width = widths[i],
                    Padding = new Padding(0, 0, gap, 0),
                }
            );
        }

        foreach (IReadOnlyList<Cell> row in table.Rows)
            laid.AddRow(
                row.Select(
                    (c, i) =>
                        new Text(c.Text, StyleOf(table.Columns[i], c))
                        {
                            Justification = table.Columns[i].IsNumber ? Justify.Right : Justify.Left,
                        }
                )
            );
        return laid;
    }

    // Where a table is wider than the room, the widest columns give way first, then the gaps between them: no number is
    // broken, and no word that has room of its own.
    private static (int?[] Widths, int Gap) Widths(Table table, int room)
    {
        int gap = 1;
        int[] all = [.. Enumerable.Range(0, table.Columns.Count)],
            widths = [.. all.Select(i => Longest(table, i, '\n'))],
            least =
            [
                .. all.Select(i =>
                    table
                        .Rows.Select(r => Longest(r[i].Text, table.Columns[i].IsNumber ? ['\n'] : [' ', '\n']))
                        .Append(Longest(table.Columns[i].Title, ' '))
                        .Max()
                ),
            ];
        if (Total() <= room)
            return (
                [
                    .. all.Select(i =>
                        table.Columns[i].IsNumber || widths[i] <= LongestUnwrapped ? widths[i] : (int?)null
                    ),
                ],
                gap
            );
        if (1 + least.Sum(w => w + 1 + gap) > room)
            gap = 0;
        while (Total() > room && all.Where(i => widths[i] > least[i]).ToArray() is { Length: > 0 } wide)
            widths[wide.MaxBy(i => widths[i])]--;
        return ([.. widths.Select(w => (int?)w)], gap);

        // Each column has the gap behind it and a space of the border.
        int Total() => 1 + widths.Sum(w => w + 1 + gap);
    }

    private static int Longest(Table table, int column, char separator) =>
        table
            .Rows.Select(r => Longest(r[column].Text, separator))
            .Append(table.Columns[column].Title.Length)
            .Max();

    private static int Longest(string text, params char[] separators) => text.Split(separators).Max(w => w.Length);
}
