using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>What is read in one setting on a bike in order.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Points">Every point that a probe can reach.</param>
/// <param name="Fuses">The current in the place of each fuse.</param>
/// <param name="Lamps">How each lamp looks.</param>
public sealed record ExpectedSetting(Setting Setting, ImmutableArray<ExpectedReading> Points, ImmutableArray<ExpectedCurrent> Fuses, ImmutableArray<ExpectedLook> Lamps);
