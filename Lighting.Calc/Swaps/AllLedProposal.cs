using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every lamp of a bike replaced by the generic LED of its socket class, as far as there is one.</summary>
/// <param name="Replacements">The replacements.</param>
/// <param name="Unclassed">The lamps that stay, each with the reason.</param>
public sealed record AllLedProposal(ImmutableArray<LampReplacement> Replacements, ImmutableArray<UnclassedLamp> Unclassed);
