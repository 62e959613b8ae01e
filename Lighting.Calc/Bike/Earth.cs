namespace Lighting.Calc;

/// <summary>Which battery terminal is joined to the frame.</summary>
public enum Earth
{
    /// <summary>Battery negative on the frame.</summary>
    Negative,

    /// <summary>Battery positive on the frame, as on many older machines.</summary>
    Positive,
}
