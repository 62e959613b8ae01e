using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How much wire is cut and bought.</summary>
public sealed record CutListOptions
{
    /// <summary>Slack of each wire as a share of its length, zero or more. Default 10 % (common practice, no
    /// source).</summary>
    public Ratio Slack { get; init; } = Ratio.FromPercent(10);

    /// <summary>Slack of each wire besides, for both ends together, zero or more. Default none.</summary>
    public Length SlackLength { get; init; } = Length.Zero;

    /// <summary>Spare wire to buy as a share of all that is cut, zero or more. Default 10 % (common practice, no
    /// source).</summary>
    public Ratio Spare { get; init; } = Ratio.FromPercent(10);

    /// <summary>Prices of wire by the metre and of terminals each; empty for none.</summary>
    public ImmutableArray<ItemPrice> Prices { get; init; } = [];

    private object?[] Figures => [Slack, SlackLength, Spare];

    /// <inheritdoc/>
    public bool Equals(CutListOptions? other) =>
        other is not null && Figures.AsSpan().SequenceEqual(other.Figures) && Prices.HoldsSame(other.Prices);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Slack, Spare, Prices.HashOfParts());
}
