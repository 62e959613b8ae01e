using System.Collections.Immutable;

namespace Lighting.Calc.Fuses;

/// <summary>A falling current over time.</summary>
/// <param name="Seconds">Times, rising from zero.</param>
/// <param name="Amperes">The current at each.</param>
/// <param name="IsInTable">Whether the last temperature lies within the tungsten table.</param>
internal sealed record WarmUpCurve(ImmutableArray<double> Seconds, ImmutableArray<double> Amperes, bool IsInTable)
{
    /// <summary>The current at a time; after the last one it stays.</summary>
    public double At(double seconds)
    {
        int index = Seconds.BinarySearch(seconds);
        if (index >= 0)
            return Amperes[index];
        int next = ~index;
        if (next == Seconds.Length)
            return Amperes[^1];
        double share = (seconds - Seconds[next - 1]) / (Seconds[next] - Seconds[next - 1]);
        return Amperes[next - 1] + share * (Amperes[next] - Amperes[next - 1]);
    }
}
