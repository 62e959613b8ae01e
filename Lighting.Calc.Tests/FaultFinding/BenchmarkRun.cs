namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>How one search for one fault ended.</summary>
internal sealed record BenchmarkRun(
    FaultMember Fault,
    string Order,
    int Tests,
    bool Found,
    double Probability,
    Diagnosis Last,
    IReadOnlyList<Reading> Readings,
    double SlowestMilliseconds
);
