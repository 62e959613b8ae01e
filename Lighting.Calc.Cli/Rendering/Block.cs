namespace Lighting.Calc.Cli.Rendering;

/// <summary>One part of a document.</summary>
internal abstract record Block;

/// <summary>A heading over what follows.</summary>
internal sealed record Heading(string Text) : Block;

/// <summary>A paragraph.</summary>
internal sealed record Paragraph(string Text) : Block;

/// <summary>A table.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, one cell for each column.</param>
/// <param name="IsMain">Whether it is the one that CSV gives.</param>
internal sealed record Table(IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows, bool IsMain = false) : Block;

/// <summary>A table that is too long for a page: only CSV gives it, as the main one.</summary>
internal sealed record SpreadsheetOnly(Table Table) : Block;

/// <summary>A column of a table.</summary>
/// <param name="Title">Its heading for people.</param>
/// <param name="Key">Its heading in CSV, with the unit.</param>
/// <param name="IsNumber">Whether it is set to the right.</param>
/// <param name="IsTextBar">Whether it holds bars made of letters, in whose place a page has a chart.</param>
internal sealed record Column(string Title, string Key, bool IsNumber = false, bool IsTextBar = false);

/// <summary>A cell: what people read, and what a program reads as text or as a number.</summary>
internal readonly record struct Cell(string Text, string Raw, double? Number = null)
{
    public static implicit operator Cell(string text) => new(text, text);
}
