using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>One thing found about a bike: what kind of thing, about which part, with its figures. <see cref="Message"/>
/// puts it into words.</summary>
/// <remarks>Made by the library alone. A program that speaks another language, or acts on a finding, reads
/// <see cref="Kind"/> and the figures.</remarks>
public sealed class Finding
{
    internal Finding(FindingKind kind, Severity severity, string subject) =>
        (Kind, Severity, Subject) = (kind, severity, subject);

    /// <summary>What kind of thing it is.</summary>
    public FindingKind Kind { get; }

    /// <summary>The stable code of <see cref="Kind"/> in JSON and CSV, such as <c>voltage-drop-too-large</c>.</summary>
    public string Code => FindingWords.CodeOf(Kind);

    /// <summary>How much it weighs.</summary>
    public Severity Severity { get; }

    /// <summary>The lamp, run, fuse, switch or list it is about.</summary>
    public string Subject { get; }

    /// <summary>The figure it rests on, in the unit it is printed in; null where there is none.</summary>
    public IQuantity? Value { get; internal init; }

    /// <summary>What <see cref="Value"/> is held against; null where there is no limit.</summary>
    public IQuantity? Limit { get; internal init; }

    /// <summary>Further figures, in the order in which the sentence of its kind gives them.</summary>
    public ImmutableArray<IQuantity> Figures { get; internal init; } = [];

    /// <summary>The setting in which it holds; null where it holds in any.</summary>
    public Setting? Setting { get; internal init; }

    /// <summary>In how many further settings it holds.</summary>
    public int FurtherSettings { get; internal init; }

    /// <summary>Other parts that it concerns, by their names in the lists.</summary>
    public ImmutableArray<string> Parts { get; internal init; } = [];

    /// <summary>What cannot be said by figures and names alone: the path of a current, the basis of a rating; null
    /// where there is nothing.</summary>
    public string? Detail { get; internal init; }

    /// <summary>The finding in plain words: a sentence that begins with a capital and ends with a full stop.</summary>
    public string Message => FindingWords.Of(this);

    /// <summary>Severity, subject and message.</summary>
    public override string ToString() => $"{Severity}: {Subject}: {Message}";
}
