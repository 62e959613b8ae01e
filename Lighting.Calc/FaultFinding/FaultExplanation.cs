using System.Collections.Immutable;

namespace Lighting.Calc.FaultFinding;

/// <summary>One fault, or a pair of faults where no single one explains the readings.</summary>
/// <param name="Faults">One or two.</param>
/// <param name="Probability">Its probability, 0 to 1.</param>
/// <param name="Sentence">What it is and which readings it explains, in plain words with the numbers.</param>
public sealed record FaultExplanation(ImmutableArray<Fault> Faults, double Probability, string Sentence);
