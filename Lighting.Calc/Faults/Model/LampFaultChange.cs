namespace Lighting.Calc;

/// <summary>What faults change of the lamps on one pair of points.</summary>
internal record struct LampFaultChange
{
    /// <summary>Number of dead lamps.</summary>
    public int Dead;

    /// <summary>What is fitted in place of the right lamp; null for the right one.</summary>
    public LampSpecification? Other;

    /// <summary>Whether the two wires are exchanged.</summary>
    public bool IsReversed;

    /// <summary>One more than the index of the filament that is at these points, this one being at its; zero for
    /// none.</summary>
    public int ExchangedWith;
}
