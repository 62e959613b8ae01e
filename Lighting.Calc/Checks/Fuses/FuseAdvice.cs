using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Which standard rating to fit, as it is marked on the fuse: where the fitted one is marked with the current
/// at which it blows, so are these.</summary>
public sealed record FuseAdvice
{
    internal FuseAdvice() { }

    /// <summary>The smallest standard rating that carries the load, switching on included; null when none of the style
    /// does.</summary>
    public ElectricCurrent? MinimumRatingForLoad { get; internal init; }

    /// <summary>The largest standard rating that protects every wire it feeds and clears every short; null when none
    /// does or the wires are not known.</summary>
    public ElectricCurrent? MaximumRatingForWire { get; internal init; }

    /// <summary>Whether the wires are known, so that an upper limit can be stated.</summary>
    public bool WiresKnown { get; internal init; }

    /// <summary>The smallest rating that satisfies everything; null when none does.</summary>
    public ElectricCurrent? Smallest => !WiresKnown || Fits ? MinimumRatingForLoad : null;

    /// <summary>The largest rating that satisfies everything; null when none does, or when the wires are not
    /// known.</summary>
    public ElectricCurrent? Largest => Fits ? MaximumRatingForWire : null;

    /// <summary>The runs that must be thicker for <see cref="MinimumRatingForLoad"/>; empty when a rating satisfies
    /// everything.</summary>
    internal ImmutableArray<UpsizedRun> UpsizedRuns { get; init; }

    /// <summary>Where no rating satisfies everything: the steady current that the largest allowed rating carries;
    /// otherwise null.</summary>
    public ElectricCurrent? MaximumContinuousLoad { get; internal init; }

    /// <summary>Whether the ratings are markings with the current at which a fuse blows.</summary>
    internal bool IsMarkedWithBlowingCurrent { get; init; }

    /// <summary>The peak that the largest allowed rating holds at its temperature.</summary>
    internal ElectricCurrent? MaximumPeak { get; init; }

    /// <summary>The same in words.</summary>
    public string Explanation { get; internal init; } = null!;

    private bool Fits =>
        MinimumRatingForLoad is { } least && MaximumRatingForWire is { } most && least.Amperes <= most.Amperes + 1e-9;

    private object?[] Figures =>
        [MinimumRatingForLoad, MaximumRatingForWire, WiresKnown, MaximumContinuousLoad, Explanation];

    /// <inheritdoc/>
    public bool Equals(FuseAdvice? other) =>
        other is not null && Figures.AsSpan().SequenceEqual(other.Figures) && UpsizedRuns.HoldsSame(other.UpsizedRuns);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Explanation, UpsizedRuns.HashOfParts());
}
