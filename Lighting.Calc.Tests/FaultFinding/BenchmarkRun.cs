namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>How one search for one fault ended: its tests are those after the complaint, a round of the lamps is
/// one.</summary>
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
