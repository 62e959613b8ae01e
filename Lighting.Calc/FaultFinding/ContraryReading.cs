using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>A reading that speaks against a fault.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Message">What was read and what this fault gives, such as <c>read 12.4 V at tail feed; this gives 9.4 V</c>.</param>
public sealed record ContraryReading(Reading Reading, string Message);
