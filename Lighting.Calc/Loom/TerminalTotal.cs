namespace Lighting.Calc;

/// <summary>All terminals of one kind for one wire size.</summary>
public sealed record TerminalTotal
{
    internal TerminalTotal(string terminal, WireSize wire, int count, decimal? cost) =>
        (Terminal, Wire, Count, Cost) = (terminal, wire, count, cost);

    /// <summary>The kind.</summary>
    public string Terminal { get; }

    /// <summary>The wire it is crimped to; of a splice the largest that meets in it.</summary>
    public WireSize Wire { get; }

    /// <summary>How many; of splices one for each point.</summary>
    public int Count { get; }

    /// <summary>Cost, in the currency of the prices; null where none is listed.</summary>
    public decimal? Cost { get; }
}
