using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Tolerance of a part about its listed value: one row of <c>tables/tolerances.csv</c>, a lamp's with its own
/// published tolerance.</summary>
internal sealed class PartSpread
{
    private PartSpread(SpreadShape shape, double low, double high, bool isOffset, string source)
    {
        Shape = shape;
        Low = low;
        High = high;
        IsOffset = isOffset;
        Source = source;
    }

    /// <summary>Distribution between the limits.</summary>
    public SpreadShape Shape { get; }

    /// <summary>Source of the spread.</summary>
    public string Source { get; }

    /// <summary>Limits in words, such as <c>-6 % to +6 %</c>, <c>-20 K to +30 K</c> or <c>1/3 to 3 times</c>.</summary>
    public string Limits =>
        this switch
        {
            { IsOffset: true } => string.Create(
                CultureInfo.InvariantCulture,
                $"{Low:+0.###;-0.###;0} K to {High:+0.###;-0.###;0} K"
            ),
            { Shape: SpreadShape.LogNormal } => string.Create(
                CultureInfo.InvariantCulture,
                $"{Low:0.##} to {High:0.##} times"
            ),
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"{100 * (Low - 1):+0.###;-0.###;0} % to {100 * (High - 1):+0.###;-0.###;0} %"
            ),
        };

    /// <summary>Lowest factor on the listed value, or lowest kelvins added to it.</summary>
    internal double Low { get; }

    internal double High { get; }

    /// <summary>Whether it is kelvins added, not a factor.</summary>
    internal bool IsOffset { get; }

    /// <summary>Value that leaves the listed value: the factor 1 or 0 K.</summary>
    internal double Listed => IsOffset ? 0 : 1;

    /// <summary>What turns a uniform number into a value.</summary>
    internal QuantileTable Table => field ??= new QuantileTable(this);

    /// <summary>One row, its limits drawn towards the listed value.</summary>
    /// <param name="row">The row.</param>
    /// <param name="own">The tolerance where the row leaves it to the part.</param>
    /// <param name="scale">1 leaves the limits, 0 leaves no spread; a factor's exponent.</param>
    internal static PartSpread Of(TableRow row, Ratio? own, double scale)
    {
        double minus = own?.Percent ?? row.Number("minus"),
            plus = own?.Percent ?? row.Number("plus");
        SpreadShape shape = Enum.Parse<SpreadShape>(row.Text("shape"), ignoreCase: true);
        string source = row.Text("source");
        return row.Text("unit") switch
        {
            "%" => new PartSpread(shape, 1 - scale * minus / 100, 1 + scale * plus / 100, false, source),
            "times" => new PartSpread(shape, Math.Pow(minus, -scale), Math.Pow(plus, scale), false, source),
            "K" => new PartSpread(shape, -scale * minus, scale * plus, true, source),
            string unit => throw new InvalidDataException($"The table of tolerances has the unknown unit '{unit}'."),
        };
    }
}
