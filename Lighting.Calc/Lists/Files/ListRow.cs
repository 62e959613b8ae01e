using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>One row of a list: gives its cells as what they should be, and logs the ones that are not.</summary>
/// <param name="schema">The list.</param>
/// <param name="file">Name in messages.</param>
/// <param name="line">The file's line where the row starts.</param>
/// <param name="cells">Its cells, cleaned.</param>
/// <param name="places">For each column of the list its place among the cells, −1 if there is none.</param>
/// <param name="separator">What separates the cells of the list.</param>
/// <param name="log">Receives the faults.</param>
internal sealed class ListRow(
    ListSchema schema,
    string file,
    int line,
    string[] cells,
    int[] places,
    char separator,
    FaultLog log
)
{
    private (string Column, Condition? Condition, string? Expected) _condition = ("", null, null);

    public string File => file;

    public int Line => line;

    /// <summary>Number of the row in a list of JSON, the first being 1; 0 in a file, where the line tells.</summary>
    public int Row { get; init; }

    /// <summary>The item that the row is, where JSON names it by its key; else null.</summary>
    public string? Item { get; init; }

    /// <summary>Where the row stands: <c>line 7</c>, or <c>row 3</c> of JSON.</summary>
    public string Where => Row > 0 ? $"row {Row}" : $"line {line}";

    /// <summary>Whether a fault of this row has been logged.</summary>
    public bool IsFaulty { get; private set; }

    /// <summary>The cell's text; null if it is blank or its column is absent.</summary>
    public string? Text(string column)
    {
        int place = Place(column);
        return place < 0 || cells[place].Length == 0 ? null : cells[place];
    }

    /// <summary>The cell's text; null, with the fault logged, when it is blank.</summary>
    public string? Required(string column)
    {
        string? text = Text(column);
        if (text is null)
            Fault(column, null, "the cell is blank", null);
        return text;
    }

    /// <summary>A quantity; null if the cell is blank, or is not one and the fault is logged.</summary>
    public TQuantity? Quantity<TQuantity>(string column, QuantityText<TQuantity> reader)
        where TQuantity : struct, IQuantity
    {
        if (Text(column) is not { } text)
            return null;
        if (reader.TryParse(text, out TQuantity quantity, out TextProblem? problem))
            return quantity;
        Fault(column, problem);
        return null;
    }

    /// <summary>A whole number; null if the cell is blank, or is not one and the fault is logged.</summary>
    public int? Whole(string column, int lowest, int highest)
    {
        if (Text(column) is not { } text)
            return null;
        if (
            int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value)
            && value >= lowest
            && value <= highest
        )
            return value;
        Fault(column, text, $"is not a whole number from {lowest} to {highest}", null);
        return null;
    }

    /// <summary>One of some known words; null if the cell is blank, or is not one and the fault is logged.</summary>
    public T? Word<T>(string column, string noun, params (string Word, T Value)[] words)
        where T : struct
    {
        if (Text(column) is not { } text)
            return null;
        foreach ((string word, T value) in words)
            if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase))
                return value;
        Fault(
            column,
            text,
            $"is not {noun}",
            $"expected {Choice.Of(words.Select(w => w.Word))}",
            SpellingSuggestions.Of(text, words.Select(w => w.Word))
        );
        return null;
    }

    /// <summary>A condition; <see cref="Condition.Always"/> when the cell is blank, or is not one and the fault is
    /// logged.</summary>
    public Condition Condition(string column)
    {
        Condition? condition = ConditionOrNull(column);
        if (condition is null)
            Fault(column, Text(column), "is not a condition", $"expected {_condition.Expected}");
        return condition ?? Calc.Condition.Always;
    }

    /// <summary>A condition; null if the cell does not hold one, which is not logged.</summary>
    public Condition? ConditionOrNull(string column)
    {
        if (_condition.Column != column)
            _condition = Calc.Condition.TryParse(Text(column) ?? "", out Condition condition, out string? expected)
                ? (column, condition, null)
                : (column, null, expected);
        return _condition.Condition;
    }

    /// <summary>A condition that says how switches are held: each in one position.</summary>
    public Condition Held(string column)
    {
        Condition condition = Condition(column);
        foreach (ConditionTerm term in condition.Terms.Where(t => t.Positions.Length > 1))
            Fault(
                column,
                term.ToString(),
                $"holds the switch '{term.Switch}' in several positions at once",
                "expected one position of each switch"
            );
        if (condition.Parts.Any(p => p.Length > 1))
            Fault(
                column,
                condition.ToString(),
                "does not state which switch is held",
                "expected one position of each switch, without 'or'"
            );
        return condition;
    }

    public void Fault(string column, TextProblem problem) =>
        Fault(column, problem.Text, problem.Problem, problem.Expected, problem.Nearest);

    public void Fault(
        string column,
        string? text,
        string problem,
        string? expected,
        ImmutableArray<string> nearest = default
    )
    {
        IsFaulty = true;
        log.Fault(Describe(column, text, problem, expected, nearest));
    }

    /// <summary>Logs a fault with the rows that are to take the place of this one.</summary>
    public void Replace(string column, string text, string problem, string expected, ImmutableArray<string> rows)
    {
        IsFaulty = true;
        log.Fault(Describe(column, text, problem, expected, []) with { Rows = rows });
    }

    /// <summary>This row as the list writes it, with other texts in some of its columns.</summary>
    public string With(params (string Column, string Text)[] changes)
    {
        string[] changed = [.. cells];
        foreach ((string column, string text) in changes)
            if (Place(column) is var place and >= 0)
                changed[place] = text;
        return ListTextWriter.Row(changed, separator);
    }

    public void Caution(
        string column,
        string? text,
        string problem,
        string? expected,
        ImmutableArray<string> nearest = default
    ) => log.Caution(Describe(column, text, problem, expected, nearest));

    private ListFault Describe(
        string column,
        string? text,
        string problem,
        string? expected,
        ImmutableArray<string> nearest
    )
    {
        int place = Place(column);
        return new ListFault
        {
            File = file,
            Line = line,
            Row = Item is null ? Row : 0,
            ColumnName = Item ?? (place < 0 ? null : column),
            ColumnNumber = Row > 0 ? 0 : place + 1,
            Text = text,
            Problem = place < 0 && text is null ? $"the list has no column '{column}': {problem}" : problem,
            Expected = expected,
            Nearest = nearest.IsDefault ? [] : nearest,
        };
    }

    private int Place(string column) => places[schema.IndexOf(column)];
}
