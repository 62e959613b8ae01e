namespace Lighting.Calc;

/// <summary>Uniform numbers that depend on seed, sample and parameter alone: any sample can be drawn at any time on any
/// thread.</summary>
/// <remarks>
/// SplitMix64 by counter. Source: G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number generators", OOPSLA
/// 2014; the mixing constants are D. Stafford's variant 13. Each sample is a SplitMix64 sequence whose start is itself
/// mixed from seed and sample. Integer arithmetic and one exact conversion: the same bits on every machine.
/// </remarks>
internal readonly struct SampleStream(long seed, int sample)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;
    private const double Grain = 1.0 / (1UL << 53);

    private readonly ulong _start = Mix(Mix(unchecked((ulong)seed + Golden)) + unchecked(Golden * ((ulong)sample + 1)));

    /// <summary>0 to below 1, in steps of 2^-53.</summary>
    public double Uniform(int parameter) => (Bits(parameter) >> 11) * Grain;

    public ulong Bits(int parameter) => Mix(unchecked(_start + Golden * ((ulong)parameter + 1)));

    /// <summary>The output function of SplitMix64.</summary>
    internal static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
