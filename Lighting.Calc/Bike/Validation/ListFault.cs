using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One fault or caution in a bike's lists, or of a bike built in code: place, problem and the form
/// expected.</summary>
/// <remarks>Two faults are equal when they say the same of the same place.</remarks>
public sealed record ListFault
{
    internal ListFault() { }

    /// <summary>Name of the file, such as <c>lamps.csv</c>; of JSON the name of the list, such as <c>lamps</c>; the
    /// path asked for when nothing could be opened.</summary>
    public string File { get; internal init; } = null!;

    /// <summary>Line in the file, the first being 1; 0 when the fault is the file's as a whole.</summary>
    public int Line { get; internal init; }

    /// <summary>Name of the part of a bike built in code; null in lists, and where the part has none.</summary>
    public string? Part { get; internal init; }

    /// <summary>Number of the row in a list of JSON, or of the part of a bike built in code, the first being 1; 0 in a
    /// file, and where the fault is the
    /// list's as a whole.</summary>
    public int Row { get; internal init; }

    /// <summary>Number of the column in the file, the first being 1; 0 when the fault is the line's as a
    /// whole.</summary>
    public int ColumnNumber { get; internal init; }

    /// <summary>Name of the column, of a bike built in code that of the property; null if the fault is the line's as a
    /// whole.</summary>
    public string? ColumnName { get; internal init; }

    /// <summary>The offending text; null if there is none.</summary>
    public string? Text { get; internal init; }

    /// <summary>What is wrong, to follow the text: <c>is not a number of watts</c>.</summary>
    public string Problem { get; internal init; } = null!;

    /// <summary>What to write instead; null where <see cref="Problem"/> says it all.</summary>
    public string? Expected { get; internal init; }

    /// <summary>Known words close to the text, closest first; empty if there is none.</summary>
    public ImmutableArray<string> Nearest { get; internal init; } = [];

    /// <summary>Rows to write in place of the one at fault, in the form of its list; empty if it is not to be
    /// replaced by others.</summary>
    public ImmutableArray<string> Rows { get; internal init; } = [];

    /// <summary>The fault in one line: <c>lamps.csv:7: column 'watts' (6): '55,0' is not a number of watts; write a
    /// decimal point: 55.0</c>.</summary>
    public string Message =>
        File
        + (
            Line > 0 ? $":{Line}"
            : Row > 0 ? $" row {Row}"
            : ""
        )
        + (Part is null ? ": " : $" {OneLine.Quoted(Part)}: ")
        + (ColumnName is null ? "" : $"{Noun}'{ColumnName}'{(ColumnNumber > 0 ? $" ({ColumnNumber})" : "")}: ")
        + OneLine.Of(Text, Problem, Expected, Nearest);

    // Of a bike built in code it is a property.
    private string Noun => Line == 0 && File.StartsWith(nameof(Bike), StringComparison.Ordinal) ? "" : "column ";

    /// <inheritdoc/>
    public bool Equals(ListFault? other) =>
        other is not null
        && (File, Line, Row, Part, ColumnNumber, ColumnName, Text, Problem, Expected)
            == (
                other.File,
                other.Line,
                other.Row,
                other.Part,
                other.ColumnNumber,
                other.ColumnName,
                other.Text,
                other.Problem,
                other.Expected
            )
        && Nearest.AsSpan().SequenceEqual(other.Nearest.AsSpan())
        && Rows.AsSpan().SequenceEqual(other.Rows.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(File, Line, Row, ColumnNumber, Text, Problem);

    /// <summary>The same as <see cref="Message"/>.</summary>
    public override string ToString() => Message;
}
