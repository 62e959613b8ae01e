namespace Lighting.Calc;

/// <summary>The overload rule: a wire stands the current at which its fuse is sure to open.</summary>
/// <remarks>
/// Formula: I2 ≤ 1.45·Iz with I2 = f·In; In is the rating of the fuse, f its fusing factor, Iz the rating of the wire.
/// Source: IEC 60364-4-43, 433.1. For wires that give off heat meanwhile; a dead short is a matter of
/// <see cref="ShortCircuitHeat"/>.
/// </remarks>
internal static class OverloadRule
{
    private const double MostOverload = 1.45;

    /// <summary>The largest rating of a fuse, in amperes, that a wire stands.</summary>
    /// <param name="wireAmperes">Rating of the wire, zero or more.</param>
    /// <param name="fusingFactor">Current at which the fuse is sure to open, in ratings; above 1.</param>
    public static double LargestFuse(double wireAmperes, double fusingFactor) =>
        MostOverload * wireAmperes / fusingFactor;
}
