using System.Text;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>Bars as characters: <c>#</c> for the value, <c>|</c> for each mark.</summary>
internal static class TextBars
{
    private const int Width = 40;
    private const int LongestName = 16;

    public static string Of(BarChart chart)
    {
        double most = chart.Bars.SelectMany(b => b.Marks.OfType<double>().Append(b.Value)).DefaultIfEmpty().Max();
        if (most <= 0)
            return "";
        int name = Math.Min(LongestName, chart.Bars.Max(b => b.Label.Length));
        var text = new StringBuilder();
        foreach (Bar bar in chart.Bars)
        {
            char[] line = [.. new string('#', Place(bar.Value)).PadRight(Width + 1)];
            foreach (double mark in bar.Marks.OfType<double>())
                line[Place(mark)] = '|';
            string label = bar.Label.Length <= name ? bar.Label : bar.Label[..(name - 1)] + "…";
            text.Append(' ').Append(label.PadRight(name)).Append("  ").Append(new string(line)).Append('\n');
        }

        if (chart.Marks.Count > 0)
            text.Append(' ').Append(' ', name).Append("  | ").AppendJoin(", | ", chart.Marks).Append('\n');
        return text.ToString();

        int Place(double value) => (int)Math.Round(value / most * Width);
    }
}
