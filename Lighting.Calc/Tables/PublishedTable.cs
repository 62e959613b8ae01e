using System.Collections.Immutable;
using CsvHelper;

namespace Lighting.Calc;

/// <summary>One published table, as printed, with the source of each row.</summary>
/// <remarks>The tables are CSV files embedded in the library; every row has a <c>source</c> column.</remarks>
internal sealed class PublishedTable
{
    private const string Prefix = "tables/";

    private PublishedTable(string name, ImmutableArray<string> columns, ImmutableArray<ImmutableArray<string>> rows)
    {
        Name = name;
        Columns = columns;
        Rows = rows;
    }

    /// <summary>Its name, such as <c>lamps</c>.</summary>
    public string Name { get; }

    /// <summary>Its columns; a number's column ends in its unit.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>Its rows, one text for each column.</summary>
    public ImmutableArray<ImmutableArray<string>> Rows { get; }

    /// <summary>The names of all tables, in order.</summary>
    public static ImmutableArray<string> Names { get; } =
    [
        .. typeof(PublishedTable)
            .Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(n => Path.GetFileNameWithoutExtension(n[Prefix.Length..]))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Reads a table.</summary>
    public static PublishedTable Load(string name)
    {
        using Stream stream =
            typeof(PublishedTable).Assembly.GetManifestResourceStream($"{Prefix}{name}.csv")
            ?? throw new ArgumentException(
                $"There is no table '{name}'; the tables are {string.Join(", ", Names)}.",
                nameof(name)
            );
        using var text = new StreamReader(stream);
        return Parse(name, text.ReadToEnd());
    }

    internal static PublishedTable Parse(string name, string text)
    {
        using CsvReader csv = CsvReader.FromText(
            text,
            new CsvReaderOptions
            {
                MalformedData = CsvMalformedDataHandling.Throw,
                FieldCountMismatch = CsvFieldCountHandling.Throw,
            }
        );
        csv.ReadHeader();
        ImmutableArray<string> columns = [.. csv.Headers];
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        while (csv.Read())
            rows.Add([.. Enumerable.Range(0, columns.Length).Select(csv.GetString)]);
        return new PublishedTable(name, columns, rows.ToImmutable());
    }

    /// <summary>The table with only the rows in which all these words stand, in any column but the source.</summary>
    internal PublishedTable With(IReadOnlyCollection<string> words)
    {
        int source = Columns.IndexOf("source");
        return new PublishedTable(Name, Columns, [.. Rows.Where(r => words.All(w => Stands(r, w)))]);

        bool Stands(ImmutableArray<string> row, string word) =>
            row.Where((_, i) => i != source).Any(c => c.Contains(word, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The rows, read by column name.</summary>
    internal IEnumerable<TableRow> Read() => Rows.Select(row => new TableRow(this, row));
}
