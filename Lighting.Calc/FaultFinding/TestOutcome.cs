using System.Collections.Immutable;

namespace Lighting.Calc.FaultFinding;

/// <summary>One way a test can turn out, and what it would mean.</summary>
/// <param name="Outcome">What is read, such as <c>0 V to 0.3 V</c> or <c>dim</c>; numbers of a bike in order end in <c>as it should be</c>.</param>
/// <param name="Probability">How likely, 0 to 1.</param>
/// <param name="Faults">The likeliest faults then, at most three, each with its probability.</param>
/// <param name="Meaning">Those faults in plain words.</param>
public sealed record TestOutcome(string Outcome, double Probability, ImmutableArray<FaultExplanation> Faults, string Meaning);
