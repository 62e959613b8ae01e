using UnitsNet;

namespace Lighting.Calc;

/// <summary>A run that must be thicker for the fuse its load needs.</summary>
/// <param name="Run">The run.</param>
/// <param name="Wire">The thinnest size of the same construction, with a published rating of its own, that carries
/// that fuse; null when none of them does.</param>
/// <param name="FuseOfItsOwn">Instead, the largest standard continuous rating that protects the wire as it is, for a
/// fuse at its start; null for a return, and where none carries the run's largest current continuously.</param>
internal sealed record UpsizedRun(Run Run, WireSize? Wire, ElectricCurrent? FuseOfItsOwn);
