using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The wires chosen for a whole harness, or why none were found.</summary>
public sealed class WireSizingResult
{
    internal WireSizingResult() { }

    /// <summary>The sizes that were chosen from, smallest first.</summary>
    public ImmutableArray<WireSize> Sizes { get; internal init; }

    /// <summary>Voltage of the source.</summary>
    public ElectricPotential Supply { get; internal init; }

    /// <summary>Whether sizes were found. They hold every limit but those of <see cref="Unmet"/>.</summary>
    public bool IsFeasible => !Runs.IsEmpty;

    /// <summary>Limits of drop that no listed size keeps, each with what would; also among
    /// <see cref="Findings"/>.</summary>
    public ImmutableArray<Finding> Unmet => [.. Findings.Where(f => f.Kind == FindingKind.DropLimitNotMet)];

    /// <summary>The lamps whose drop limit is not met.</summary>
    internal ImmutableArray<string> UnmetLamps => [.. Unmet.SelectMany(f => f.Parts.Prepend(f.Subject))];

    /// <summary>The runs to choose for with the size chosen for each, in the order of the list; empty when none was
    /// found.</summary>
    public ImmutableArray<RunSizing> Runs { get; internal init; }

    /// <summary>The lamps, in the order of the list.</summary>
    internal ImmutableArray<LampSizing> Lamps { get; init; }

    /// <summary>Copper of the wires as fitted: the sum of area × length; null where the wire of a run is
    /// open.</summary>
    public Volume? CopperFitted { get; internal init; }

    /// <summary>Copper of the wires as chosen; null when none was found.</summary>
    public Volume? CopperChosen { get; internal init; }

    /// <summary>The outcome in words; when no choice was found, what fails with the thickest and by how much.</summary>
    public string Explanation { get; internal init; } = null!;

    /// <summary>What was found: limits that no listed size keeps, wires whose kind of cable must be stated, fitted
    /// wires that are too thin.</summary>
    public ImmutableArray<Finding> Findings { get; internal init; }

    /// <summary>The bike with the chosen wires; null when none was found.</summary>
    public Bike? Sized { get; internal init; }
}
