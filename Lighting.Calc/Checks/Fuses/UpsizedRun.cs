using UnitsNet;

namespace Lighting.Calc;

/// <summary>A run that must be thicker for the fuse its load needs.</summary>
internal sealed record UpsizedRun
{
    internal UpsizedRun(Run run, WireSize? wire, ElectricCurrent? fuseOfItsOwn) =>
        (Run, Wire, FuseOfItsOwn) = (run, wire, fuseOfItsOwn);

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>The thinnest size of the same construction, with a published rating of its own, that carries that fuse;
    /// null when none of them does.</summary>
    public WireSize? Wire { get; }

    /// <summary>Instead, the largest standard continuous rating that protects the wire as it is, for a fuse at its
    /// start; null for a return, and where none carries the run's largest current continuously.</summary>
    public ElectricCurrent? FuseOfItsOwn { get; }
}
