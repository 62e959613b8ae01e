using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>One fuse of a plan.</summary>
public sealed class FuseWay
{
    internal FuseWay() { }

    /// <summary>The fuse: a way of the box, or the main fuse.</summary>
    public Fuse Fuse { get; internal init; } = null!;

    /// <summary>Whether it is the main fuse, before the box.</summary>
    public bool IsMain { get; internal init; }

    /// <summary>Whether it is in line, alone at its point: neither the main fuse nor in a box.</summary>
    public bool IsInLine { get; internal init; }

    /// <summary>Colour of its body (ISO 8820-3); empty where its style has none.</summary>
    public string Colour { get; internal init; } = "";

    /// <summary>The circuits that it feeds.</summary>
    public ImmutableArray<string> Circuits { get; internal init; }

    /// <summary>The lamps and other loads that it feeds.</summary>
    public ImmutableArray<string> Lamps { get; internal init; }

    /// <summary>Largest continuous current.</summary>
    public ElectricCurrent ContinuousCurrent { get; internal init; }

    /// <summary>Largest current, momentary loads included.</summary>
    public ElectricCurrent PeakCurrent { get; internal init; }

    /// <summary>The smallest wire behind it, or on a bike without runs the smallest to fit; null where no listed size
    /// is rated for it.</summary>
    public WireSize? SmallestWire { get; internal init; }
}
