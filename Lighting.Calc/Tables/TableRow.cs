using System.Collections.Immutable;
using System.Globalization;

namespace Lighting.Calc;

/// <summary>One row of a published table, read by column name.</summary>
internal readonly record struct TableRow(PublishedTable Table, ImmutableArray<string> Cells)
{
    public string Text(string column)
    {
        int index = Table.Columns.IndexOf(column);
        return index >= 0
            ? Cells[index]
            : throw new InvalidDataException($"The table '{Table.Name}' has no column '{column}'.");
    }

    public double Number(string column) =>
        NumberOrNull(column)
        ?? throw new InvalidDataException(
            $"The table '{Table.Name}' lacks '{column}' in the row '{string.Join(',', Cells)}'."
        );

    public double? NumberOrNull(string column)
    {
        string text = Text(column);
        if (text.Length == 0)
            return null;
        return
            double.TryParse(
                text,
                NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
                CultureInfo.InvariantCulture,
                out double value
            ) && double.IsFinite(value)
            ? value
            : throw new InvalidDataException(
                $"The table '{Table.Name}' has '{text}' where '{column}' must be a number."
            );
    }
}
