using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What direct lighting does in one setting.</summary>
public sealed record DirectLightingReport
{
    /// <summary>The setting.</summary>
    public required Setting Setting { get; init; }

    /// <summary>The lighting over engine speed, slowest first.</summary>
    public required ImmutableArray<DirectLightingPoint> Points { get; init; }

    /// <summary>Each lit lamp lost at the fastest speed.</summary>
    public required ImmutableArray<DirectLightingChange> Losses { get; init; }

    /// <summary>What a regulator that holds the charging volts takes at the fastest speed, every lamp sound.</summary>
    public required ShuntRegulatorLoad Regulator { get; init; }

    /// <summary>What is found, the gravest first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }
}
