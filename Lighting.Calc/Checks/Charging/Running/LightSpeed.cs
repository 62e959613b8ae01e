using UnitsNet;

namespace Lighting.Calc;

/// <summary>The engine speed from which a lamp has a share of its light.</summary>
public sealed class LightSpeed
{
    internal LightSpeed(Ratio share, RotationalSpeed? speed, RotationalSpeed slowest, RotationalSpeed fastest) =>
        (Share, Speed, Slowest, Fastest) = (share, speed, slowest, fastest);

    /// <summary>The share.</summary>
    public Ratio Share { get; }

    /// <summary>The speed; the slowest known one where it has that share there already, null where it has it at no
    /// known speed.</summary>
    public RotationalSpeed? Speed { get; }

    /// <summary>Slowest speed at which the output is known.</summary>
    public RotationalSpeed Slowest { get; }

    /// <summary>Fastest speed at which the output is known.</summary>
    public RotationalSpeed Fastest { get; }

    /// <summary>Whether it has that share at every known speed.</summary>
    public bool Always => Speed?.RevolutionsPerMinute == Slowest.RevolutionsPerMinute;
}
