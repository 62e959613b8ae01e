using Spectre.Console;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A document as text: aligned tables, at most 80 columns when not on a terminal, colour only on one.</summary>
internal static class TextRenderer
{
    private const int PlainWidth = 80;

    public static void Render(Document document, TextWriter output, bool isTerminal)
    {
        bool colour = isTerminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = colour ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = colour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(output),
        });
        if (!isTerminal)
            console.Profile.Width = PlainWidth;
        console.Profile.Capabilities.Unicode = true;
        console.Write(new Text(document.Title + "\n", new Style(decoration: Decoration.Bold)));
        if (document.Verdict.Length > 0)
            console.Write(new Text(document.Verdict + "\n"));
        foreach (Block block in document.Blocks)
        {
            console.Write(new Text("\n"));
            switch (block)
            {
                case Heading heading:
                    console.Write(new Text(heading.Text + "\n", new Style(decoration: Decoration.Bold)));
                    break;
                case Paragraph paragraph:
                    console.Write(new Text(paragraph.Text + "\n"));
                    break;
                case Table table:
                    console.Write(Laid(table));
                    break;
                default:
                    throw new InvalidOperationException($"No text form for {block.GetType().Name}.");
            }
        }
    }

    private static Spectre.Console.Table Laid(Table table)
    {
        var laid = new Spectre.Console.Table { Border = TableBorder.Simple, ShowRowSeparators = false };
        foreach (Column column in table.Columns)
            laid.AddColumn(new TableColumn(new Text(column.Title)) { Alignment = column.IsNumber ? Justify.Right : Justify.Left, NoWrap = column.IsNumber });
        foreach (IReadOnlyList<Cell> row in table.Rows)
            laid.AddRow(row.Select((c, i) => new Text(c.Text) { Justification = table.Columns[i].IsNumber ? Justify.Right : Justify.Left }));
        return laid;
    }
}
