using System.Collections.Immutable;

namespace Lighting.Calc;

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
        return At(seconds, index >= 0 ? index : ~index);
    }

    /// <summary>Adds a multiple of the current at each of some times; after the curve's last time the current
    /// stays.</summary>
    /// <param name="times">Times from zero, rising.</param>
    /// <param name="factor">The multiple.</param>
    /// <param name="sum">Takes it, one for each time.</param>
    public void AddAt(ImmutableArray<double> times, double factor, Span<double> sum)
    {
        int next = 0;
        for (int i = 0; i < times.Length; i++)
        {
            while (next < Seconds.Length && Seconds[next] < times[i])
                next++;
            sum[i] += factor * At(times[i], next);
        }
    }

    // Next is the first place that is not before the time.
    private double At(double seconds, int next)
    {
        if (next == Seconds.Length)
            return Amperes[^1];
        if (Seconds[next] == seconds)
            return Amperes[next];
        double share = (seconds - Seconds[next - 1]) / (Seconds[next] - Seconds[next - 1]);
        return Amperes[next - 1] + share * (Amperes[next] - Amperes[next - 1]);
    }
}
