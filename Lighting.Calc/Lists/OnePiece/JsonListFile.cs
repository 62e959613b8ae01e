using System.Collections.Immutable;
using System.Text.Json;

namespace Lighting.Calc;

/// <summary>One list of a bike's JSON: an array with an object a row; of <c>bike</c> an object with an item
/// each.</summary>
/// <param name="Schema">The list it is.</param>
/// <param name="Label">Name in messages: its key.</param>
/// <param name="Content">Its rows.</param>
internal sealed record JsonListFile(ListSchema Schema, string Label, JsonElement Content)
    : ListFile(Schema.File, Label, () => Stream.Null)
{
    /// <summary>The list as rows of text under known columns; what is no cell of a row is logged.</summary>
    public override ListTable? Table(ListSchema schema, FaultLog log) =>
        schema == ListSchema.Bike ? Items(schema, log) : Rows(schema, log);

    private ListTable? Items(ListSchema schema, FaultLog log)
    {
        if (Content.ValueKind != JsonValueKind.Object)
            return Refuse(
                0,
                $"is {Kind(Content)}",
                "expected an object with the items of the bike and their values",
                log
            );
        var rows = ImmutableArray.CreateBuilder<ListRow>();
        int before = log.FaultCount;
        foreach (JsonProperty item in Content.EnumerateObject())
            if (Cell(item, rows.Count + 1, log) is { } value)
                rows.Add(
                    new ListRow(schema, Label, 0, [CellText.Clean(item.Name), value, ""], [0, 1, 2], ',', log)
                    {
                        Row = rows.Count + 1,
                        Item = item.Name,
                    }
                );
        return new ListTable(schema, Label, rows.ToImmutable(), log.FaultCount == before);
    }

    private ListTable? Rows(ListSchema schema, FaultLog log)
    {
        if (Content.ValueKind != JsonValueKind.Array)
            return Refuse(0, $"is {Kind(Content)}", "expected an array with an object for each row", log);
        if (Content.GetArrayLength() > ListLimits.Rows)
            return Refuse(0, $"the list has more than {ListLimits.Rows} rows", null, log);
        int[] places = [.. Enumerable.Range(0, schema.Columns.Length)];
        var rows = ImmutableArray.CreateBuilder<ListRow>(Content.GetArrayLength());
        int before = log.FaultCount;
        int number = 0;
        foreach (JsonElement element in Content.EnumerateArray())
        {
            number++;
            if (element.ValueKind != JsonValueKind.Object)
                Refuse(number, $"is {Kind(element)}", "expected an object with a value for each column", log);
            else if (Cells(schema, element, number, log) is { } cells)
                rows.Add(new ListRow(schema, Label, 0, cells, places, ',', log) { Row = number });
        }

        return new ListTable(schema, Label, rows.ToImmutable(), log.FaultCount == before);
    }

    // The cells of a row, one for each column of the list; null, with the faults logged, where one is not what a cell
    // can be.
    private string[]? Cells(ListSchema schema, JsonElement row, int number, FaultLog log)
    {
        var cells = new string?[schema.Columns.Length];
        int before = log.FaultCount;
        foreach (JsonProperty property in row.EnumerateObject())
        {
            int column = schema.IndexOf(CellText.Clean(property.Name));
            if (column < 0)
                Fault(
                    property.Name,
                    "is not a column of this list",
                    $"the columns are {schema.KnownColumns}",
                    SpellingSuggestions.Of(property.Name, schema.Columns.Select(c => c.Name))
                );
            else if (cells[column] is not null)
                Fault(property.Name, "is given twice", "keep one of the two", []);
            else
                cells[column] = Cell(property, number, log);
        }

        return log.FaultCount == before ? [.. cells.Select(c => c ?? "")] : null;

        void Fault(string name, string problem, string expected, ImmutableArray<string> nearest) =>
            log.Fault(
                new ListFault
                {
                    File = Label,
                    Row = number,
                    Text = name,
                    Problem = problem,
                    Expected = expected,
                    Nearest = nearest,
                }
            );
    }

    // The text of a value as a cell has it; null, with the fault logged, where it cannot be that of a cell.
    private string? Cell(JsonProperty property, int row, FaultLog log)
    {
        string? text = property.Value.ValueKind switch
        {
            JsonValueKind.String => property.Value.GetString(),
            JsonValueKind.Number => property.Value.GetRawText(),
            JsonValueKind.True => "yes",
            JsonValueKind.False => "no",
            JsonValueKind.Null => "",
            _ => null,
        };
        string? problem = text is null
            ? $"is {Kind(property.Value)}, not a text or a number"
            : CellText.ProblemOf(text);
        if (problem is null)
            return CellText.Clean(text!);
        log.Fault(
            new ListFault
            {
                File = Label,
                Row = row,
                ColumnName = property.Name,
                Text = text,
                Problem = text is null ? $"the value {problem}" : problem,
            }
        );
        return null;
    }

    private ListTable? Refuse(int row, string problem, string? expected, FaultLog log)
    {
        log.Fault(
            new ListFault
            {
                File = Label,
                Row = row,
                Problem = problem,
                Expected = expected,
            }
        );
        return null;
    }

    private static string Kind(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => "an object",
            JsonValueKind.Array => "an array",
            JsonValueKind.String => "a text",
            JsonValueKind.Number => "a number",
            JsonValueKind.Null => "null",
            _ => "true or false",
        };
}
