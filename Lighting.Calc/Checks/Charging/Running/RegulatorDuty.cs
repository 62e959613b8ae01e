using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Current and heat of a shunt regulator or a Zener diode over engine speed.</summary>
/// <param name="LightsOff">The operating points with the least load in which the engine runs, slowest first.</param>
/// <param name="LightsOn">The operating points by night, slowest first; empty where the bike has no headlamp.</param>
/// <param name="Rating">Heat that it is rated for; null where not listed.</param>
internal sealed record RegulatorDuty(
    ImmutableArray<OperatingPoint> LightsOff,
    ImmutableArray<OperatingPoint> LightsOn,
    Power? Rating
)
{
    /// <summary>Whether it is a Zener diode.</summary>
    public bool IsZener { get; init; }

    /// <summary>What it is called.</summary>
    internal string Name => IsZener ? "Zener diode" : "shunt regulator";

    /// <summary>The point of its largest heat; null where it never conducts.</summary>
    public OperatingPoint? Worst =>
        LightsOff
            .Concat(LightsOn)
            .Where(p => p.Bus!.RegulatorCurrent.Amperes > 0)
            .MaxBy(p => p.Bus!.RegulatorHeat.Watts);

    /// <summary>Whether its heat exceeds its rating.</summary>
    public bool IsOverloaded => Rating is { } rating && Worst is { } worst && worst.Bus!.RegulatorHeat > rating;
}
