using UnitsNet;

namespace Lighting.Calc;

/// <summary>Tolerance of the load and verdict of a fuse.</summary>
public sealed class FuseTolerance
{
    internal FuseTolerance(FuseSuitability listed, ResultSpread<ElectricCurrent> current) =>
        (Fuse, Current, UsableCurrent, Verdict) = (listed.Fuse, current, listed.Steady.UsableCurrent, listed.Verdict);

    /// <summary>The fuse.</summary>
    public Fuse Fuse { get; }

    /// <summary>Its current, each bike taken in the fuse's worst setting.</summary>
    public ResultSpread<ElectricCurrent> Current { get; }

    /// <summary>Current it may carry continuously.</summary>
    public ElectricCurrent UsableCurrent { get; }

    /// <summary>The verdict on the listed bike.</summary>
    public FuseVerdict Verdict { get; }

    /// <summary>The same in words, such as <c>suits</c>.</summary>
    public string VerdictText => FuseSuitability.TextOf(Verdict);
}
