namespace Lighting.Calc;

/// <summary>One setting solved before and after a change.</summary>
internal sealed record PointPair(OperatingPoint Before, OperatingPoint After)
{
    // A lamp on less than half of the source voltage is not meant to be lit: it is in series with another.
    private const double LitShare = 0.5;

    public bool IsLitBefore(int lamp) => IsLit(Before, lamp);

    public static bool IsLit(OperatingPoint point, int lamp) =>
        Math.Abs(point.Lamps[lamp].Voltage.Volts) > LitShare * point.SupplyVoltage.Volts;
}
