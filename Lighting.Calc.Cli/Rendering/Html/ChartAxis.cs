using System.Globalization;

namespace Lighting.Calc.Cli.Rendering.Html;

/// <summary>An axis with round ticks that covers a range.</summary>
/// <param name="First">Its first tick.</param>
/// <param name="Last">Its last tick.</param>
/// <param name="Step">From tick to tick.</param>
internal sealed record ChartAxis(double First, double Last, double Step)
{
    public IEnumerable<double> Ticks =>
        Enumerable
            .Range(0, (int)Math.Round((Last - First) / Step) + 1)
            .Select(i => Math.Round((First / Step) + i) * Step);

    /// <summary>The axis over a range.</summary>
    /// <param name="least">The least value on it.</param>
    /// <param name="most">The greatest.</param>
    /// <param name="ticks">About as many steps as it may have.</param>
    public static ChartAxis Over(double least, double most, int ticks)
    {
        double range = most > least ? most - least : 1;
        double decade = Math.Pow(10, Math.Floor(Math.Log10(range / ticks)));
        double step = new[] { 1, 2, 5, 10 }.Select(m => m * decade).First(s => range / s <= ticks);
        double first = Math.Floor(least / step + 1e-9) * step,
            last = Math.Ceiling(most / step - 1e-9) * step;
        return new ChartAxis(first, last > first ? last : first + step, step);
    }

    public double ShareOf(double value) => (value - First) / (Last - First);

    public string TextOf(double tick) => tick.ToString("0.####", CultureInfo.InvariantCulture);
}
