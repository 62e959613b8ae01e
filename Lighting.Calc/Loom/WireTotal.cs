using UnitsNet;

namespace Lighting.Calc;

/// <summary>All wire of one size, kind and colour.</summary>
public sealed record WireTotal
{
    internal WireTotal(
        WireSize wire,
        CableKind? cable,
        WireColour? colour,
        int count,
        Length cut,
        Length toBuy,
        decimal? cost
    ) => (Wire, Cable, Colour, Count, Cut, ToBuy, Cost) = (wire, cable, colour, count, cut, toBuy, cost);

    /// <summary>The size.</summary>
    public WireSize Wire { get; }

    /// <summary>The kind of cable; null where not stated.</summary>
    public CableKind? Cable { get; }

    /// <summary>The colour; null where not listed.</summary>
    public WireColour? Colour { get; }

    /// <summary>Number of wires.</summary>
    public int Count { get; }

    /// <summary>Sum of the lengths to cut.</summary>
    public Length Cut { get; }

    /// <summary>The same with spare.</summary>
    public Length ToBuy { get; }

    /// <summary>Cost of <see cref="ToBuy"/>, in the currency of the prices; null where none is listed.</summary>
    public decimal? Cost { get; }
}
