using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every lamp of a bike replaced by the generic LED of its socket class, as far as there is one.</summary>
public sealed class AllLedProposal
{
    internal AllLedProposal(ImmutableArray<LampReplacement> replacements, ImmutableArray<UnclassedLamp> unclassed) =>
        (Replacements, Unclassed) = (replacements, unclassed);

    /// <summary>The replacements.</summary>
    public ImmutableArray<LampReplacement> Replacements { get; }

    /// <summary>The lamps that stay, each with the reason.</summary>
    public ImmutableArray<UnclassedLamp> Unclassed { get; }
}
