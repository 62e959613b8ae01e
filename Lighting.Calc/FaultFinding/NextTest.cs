using System.Collections.Immutable;

namespace Lighting.Calc.FaultFinding;

/// <summary>The test that is expected to tell most for its effort.</summary>
/// <param name="Test">What to do.</param>
/// <param name="Information">Expected information about which fault it is, in bits.</param>
/// <param name="Effort">Its effort against one probing with the meter.</param>
/// <param name="Instruction">What to do, in plain words.</param>
/// <param name="Outcomes">What can come out, likeliest first.</param>
public sealed record NextTest(FaultTest Test, double Information, double Effort, string Instruction, ImmutableArray<TestOutcome> Outcomes);
