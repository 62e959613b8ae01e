using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Fuses;

/// <summary>Which parts pass current in a setting; settings with the same closed contacts share one.</summary>
/// <param name="Setting">The first setting of them.</param>
/// <param name="Passes">For each part, whether it passes current.</param>
internal sealed record FeedState(Setting Setting, ImmutableArray<bool> Passes);
