using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What direct lighting does in one setting.</summary>
public sealed class DirectLightingReport
{
    internal DirectLightingReport() { }

    /// <summary>The setting.</summary>
    public Setting Setting { get; internal init; } = null!;

    /// <summary>The lighting over engine speed, slowest first.</summary>
    public ImmutableArray<DirectLightingPoint> Points { get; internal init; }

    /// <summary>Each lit lamp lost at the fastest speed.</summary>
    public ImmutableArray<DirectLightingChange> Losses { get; internal init; }

    /// <summary>What a regulator that holds the charging voltage takes at the fastest speed, every lamp
    /// sound.</summary>
    internal ShuntRegulatorLoad Regulator { get; init; } = null!;

    /// <summary>What is found, the gravest first.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; }
}
