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
/// <param name="Key">Its heading in CSV, with the unit; a column with neither is for text alone.</param>
/// <param name="IsNumber">Whether it is set to the right.</param>
internal sealed record Column(string Title, string Key, bool IsNumber = false);
