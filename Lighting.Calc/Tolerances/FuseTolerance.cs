using UnitsNet;

namespace Lighting.Calc;

/// <summary>How sure a fuse's load and verdict are.</summary>
public sealed record FuseTolerance
{
    /// <summary>The fuse.</summary>
    public required Fuse Fuse { get; init; }

    /// <summary>Its current, each bike taken in the fuse's worst setting.</summary>
    public required ResultSpread<ElectricCurrent> Current { get; init; }

    /// <summary>Current it may carry without end.</summary>
    public required ElectricCurrent UsableCurrent { get; init; }

    /// <summary>The verdict on the listed bike.</summary>
    public required FuseVerdict Verdict { get; init; }

    /// <summary>The same in words, such as <c>suits</c>.</summary>
    public string VerdictText => FuseSuitability.TextOf(Verdict);
}
