namespace Lighting.Calc.Cli.Rendering;

/// <summary>Letters for the settings that a page's tables name again and again; CSV keeps the settings whole.</summary>
internal sealed class SettingLegend
{
    private readonly List<Setting> _settings = [];

    /// <summary>The table with a letter for each setting.</summary>
    public Table In(Table table) =>
        table with
        {
            Rows = [.. table.Rows.Select(r => (IReadOnlyList<Cell>)[.. r.Select(In)])],
        };

    /// <summary>The same as lines of a page.</summary>
    public OpeningLines Lines => new([.. _settings.Select((s, i) => ($"{Letter(i)}  {s}", (string?)null))]);

    /// <summary>What each letter stands for; to be put under the last table that uses them.</summary>
    public Block Block => new Paragraph(string.Join("\n", _settings.Select((s, i) => $"{Letter(i)}  {s}")));

    /// <summary>The letter of a setting.</summary>
    public string Of(Setting setting)
    {
        if (!_settings.Contains(setting))
            _settings.Add(setting);
        return Letter(_settings.IndexOf(setting));
    }

    private Cell In(Cell cell) => cell.Value is Setting setting ? cell with { Text = Of(setting) } : cell;

    private static string Letter(int index) =>
        index < 26 ? ((char)('A' + index)).ToString() : $"{Letter(index / 26 - 1)}{Letter(index % 26)}";
}
