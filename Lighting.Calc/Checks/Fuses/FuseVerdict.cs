namespace Lighting.Calc;

/// <summary>Whether a fuse suits; where several things are against it, the most dangerous is named first.</summary>
public enum FuseVerdict
{
    /// <summary>Nothing is against it.</summary>
    Suits,

    /// <summary>Its continuous load or its peak exceeds its limit, or inrush may open it.</summary>
    Overloaded,

    /// <summary>A wire it feeds carries less than its rating, or has no published rating to show that it does
    /// not.</summary>
    TooLargeForTheWire,

    /// <summary>A dead short at the end of a run it feeds does not open it in time, or draws its current past
    /// it.</summary>
    WillNotClear,

    /// <summary>No setting joins it to the battery, so its load and its wires were not judged.</summary>
    NotJudged,
}
