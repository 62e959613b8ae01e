using System.Collections;
using System.Text.Json;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What is told of each of many things, declared once: text, HTML and CSV give what has a title as the columns
/// of a table, JSON gives what has a key.</summary>
internal sealed class Columns<T> : IEnumerable
{
    private static readonly string[] s_units = ["Percent", "Lm", "A", "V", "W"];

    private readonly List<Entry> _entries = [];

    /// <summary>The headings of a table in CSV.</summary>
    public IEnumerable<string> Keys => Titled.Select(e => e.TableKey);

    private IEnumerable<Entry> Titled => _entries.Where(e => e.Title is not null);

    /// <summary>A value.</summary>
    /// <param name="title">Its heading for people; null where JSON alone has it.</param>
    /// <param name="key">Its key in JSON and its heading in CSV, with the unit; empty where JSON leaves it out.</param>
    /// <param name="cell">The value.</param>
    /// <param name="format">How its number is printed, unless as its quantity always is.</param>
    /// <param name="isOptional">Whether JSON leaves it out where it is unknown.</param>
    public void Add(string? title, string key, Func<T, Cell> cell, string? format = null, bool isOptional = false) =>
        _entries.Add(
            new Entry(
                title,
                key,
                key,
                item => cell(item).In(format),
                (json, item) =>
                {
                    if (cell(item) is var value && (value.Value is not null || !isOptional))
                        json.Write(key, value);
                }
            )
        );

    /// <summary>A share: a percentage in a table, whose key says so, and in JSON a fraction of one, unless its key says
    /// percent as well.</summary>
    public void Add(string? title, string key, Func<T, Ratio?> share, string? format = null)
    {
        bool isPercent = key.EndsWith("Percent", StringComparison.Ordinal);
        _entries.Add(
            new Entry(
                title,
                key,
                isPercent ? key : key + "Percent",
                item => ((Cell)share(item)).In(format),
                (json, item) => json.Write(key, isPercent ? (Cell)share(item) : share(item)?.DecimalFractions)
            )
        );
    }

    /// <summary>A value that JSON alone has.</summary>
    public void Add(string key, Func<T, Cell> cell) => Add(null, key, cell);

    /// <summary>A share that JSON alone has.</summary>
    public void Add(string key, Func<T, Ratio?> share) => Add(null, key, share);

    /// <summary>A value before and after a change: one column for people, two in CSV, an object in JSON.</summary>
    public void Add(string? title, string key, Func<T, Cell> before, Func<T, Cell> after, string? format = null) =>
        _entries.Add(
            new Entry(
                title,
                key,
                key,
                item => Figures.Right($"{before(item).In(format).Text}→{after(item).In(format).Text}"),
                (json, item) => json.Pair(key, before(item), after(item)),
                [Half(key, "Before", before), Half(key, "After", after)]
            )
        );

    /// <summary>A value before and after a change that JSON alone has.</summary>
    public void Add(string key, Func<T, Cell> before, Func<T, Cell> after) => Add(null, key, before, after);

    /// <summary>A list of things.</summary>
    public void Add<TPart>(string key, Columns<TPart> columns, Func<T, IEnumerable<TPart>> parts) =>
        _entries.Add(new Entry(null, key, key, _ => "", (json, item) => json.Write(key, columns, parts(item))));

    /// <summary>A thing with columns of its own; null where it is unknown.</summary>
    public void Add<TPart>(string key, Columns<TPart> columns, Func<T, TPart?> part)
        where TPart : class =>
        _entries.Add(new Entry(null, key, key, _ => "", (json, item) => json.Write(key, columns, part(item))));

    /// <summary>All columns of a thing that belongs to each.</summary>
    public void Add<TPart>(Columns<TPart> columns, Func<T, TPart> part) =>
        _entries.AddRange(
            columns._entries.Select(e => new Entry(
                e.Title,
                e.Key,
                e.TableKey,
                item => e.Cell(part(item)),
                (json, item) => e.Write(json, part(item))
            ))
        );

    /// <summary>Those of some keys, in their order; a table shows them all.</summary>
    public Columns<T> Only(params string[] keys)
    {
        var only = new Columns<T>();
        only._entries.AddRange(
            keys.Select(k => _entries.First(e => e.Key == k)).Select(e => e with { Title = e.Title ?? "" })
        );
        return only;
    }

    public Table Table(IEnumerable<T> items, bool isMain = false) => TableOf([.. Titled], items, isMain);

    /// <summary>The table that CSV alone gives.</summary>
    public SpreadsheetOnly Spreadsheet(IEnumerable<T> items) =>
        new(TableOf([.. Titled.SelectMany(e => e.Halves ?? [e])], items, isMain: true));

    /// <summary>The cells of one row.</summary>
    public IReadOnlyList<Cell> Row(T item) => [.. Titled.Select(e => e.Cell(item))];

    /// <summary>Writes the members of a JSON object.</summary>
    public void Write(Utf8JsonWriter json, T item)
    {
        foreach (Entry entry in _entries.Where(e => e.Key.Length > 0))
            entry.Write(json, item);
    }

    IEnumerator IEnumerable.GetEnumerator() => Keys.GetEnumerator();

    // The unit stays at the end of the key.
    private static Entry Half(string key, string when, Func<T, Cell> cell)
    {
        string unit = s_units.FirstOrDefault(u => key.EndsWith(u, StringComparison.Ordinal)) ?? "";
        return new Entry("", key, key[..^unit.Length] + when + unit, cell, (_, _) => { });
    }

    private static Table TableOf(Entry[] shown, IEnumerable<T> items, bool isMain)
    {
        IReadOnlyList<Cell>[] rows =
        [
            .. items.Select(item => (IReadOnlyList<Cell>)[.. shown.Select(e => e.Cell(item))]),
        ];
        return new Table(
            [.. shown.Select((e, i) => new Column(e.Title!, e.TableKey, rows.Any(r => r[i].IsNumber)))],
            rows,
            isMain
        );
    }

    private sealed record Entry(
        string? Title,
        string Key,
        string TableKey,
        Func<T, Cell> Cell,
        Action<Utf8JsonWriter, T> Write,
        Entry[]? Halves = null
    );
}
