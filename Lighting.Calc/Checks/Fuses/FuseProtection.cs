using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Whether a fuse protects the wires it feeds: its rating against the current rating of the
/// thinnest.</summary>
public sealed class FuseProtection
{
    internal FuseProtection() { }

    /// <summary>The runs it feeds, up to the next fuse. A short in one of them is the fuse's to clear.</summary>
    public ImmutableArray<RunAmpacityCheck> DownstreamRuns { get; internal init; }

    /// <summary>The runs that only carry the current of its lamps back, of those that no other fuse lies before. They
    /// are held to the fuse like feeds.</summary>
    public ImmutableArray<RunAmpacityCheck> ReturnRuns { get; internal init; }

    /// <summary>The run whose wire alone carries least; one without a published rating comes first. Null when there is
    /// none.</summary>
    public RunAmpacityCheck? LimitingRun { get; internal init; }

    /// <summary>Whether the rating is within what every one of them is rated for alone; null where there are no runs to
    /// check.</summary>
    public bool? Protects { get; internal init; }

    /// <summary>Current that the wire of <see cref="LimitingRun"/> is rated for alone; null where that is not
    /// known.</summary>
    public ElectricCurrent? WireCurrent => LimitingRun?.Rating.Alone;

    /// <summary>The same in words.</summary>
    public string Explanation { get; internal init; } = null!;
}
