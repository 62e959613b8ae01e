using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>Letters for the settings that a page's tables name again and again; CSV keeps the settings whole.</summary>
internal sealed class SettingLegend
{
    private readonly List<Setting> _settings = [];

    public Cell Of(Setting setting)
    {
        int index = _settings.IndexOf(setting);
        if (index < 0)
        {
            index = _settings.Count;
            _settings.Add(setting);
        }

        return new Cell(Letter(index), setting.ToString());
    }

    /// <summary>What each letter stands for; to be put under the last table that uses them.</summary>
    public Block Block => new Paragraph(string.Join("\n", _settings.Select((s, i) => $"{Letter(i)}  {s}")));

    private static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : $"{Letter(index / 26 - 1)}{Letter(index % 26)}";
}
