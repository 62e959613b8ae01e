using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Swaps;

/// <summary>Every lamp of a bike replaced by the generic LED of its socket class, as far as there is one.</summary>
/// <param name="Replacements">The replacements.</param>
/// <param name="Unclassed">The lamps that stay, each with the reason.</param>
public sealed record AllLedProposal(ImmutableArray<LampReplacement> Replacements, ImmutableArray<UnclassedLamp> Unclassed);
