namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>How one search for one fault ended: its tests are those after the complaint, a round of the lamps is
/// one. Named is what has a probability of 80 %, from which on the tool gives the repair; a fuse that a short has blown
/// is named by itself, and where the short is is placed after it. The search goes on until it is sure.</summary>
internal sealed record BenchmarkRun(
    FaultMember Fault,
    string Order,
    int Tests,
    int TestsToName,
    int TestsToPlace,
    bool IsNamedRight,
    bool Found,
    double Probability,
    Diagnosis Last,
    IReadOnlyList<Reading> Readings,
    double SlowestMilliseconds
);
