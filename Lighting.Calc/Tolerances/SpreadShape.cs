namespace Lighting.Calc;

/// <summary>How the values of a part lie between its limits. Every shape ends at the limits: what lies beyond is not sold, or is a fault and not a tolerance.</summary>
public enum SpreadShape
{
    /// <summary>Anywhere between the limits alike.</summary>
    Uniform,

    /// <summary>Falling off in straight lines from the listed value to both limits.</summary>
    Triangular,

    /// <summary>Normal about the listed value, the limits at two standard deviations and the tails beyond cut off; with unequal limits each side has its own.</summary>
    Normal,

    /// <summary>Normal in the logarithm, the limits at two standard deviations and the tails beyond cut off.</summary>
    LogNormal,
}
