namespace Lighting.Calc;

/// <summary>Distribution of a part's values between its limits. Every distribution ends at the limits: values beyond
/// are faults, not tolerances.</summary>
internal enum SpreadShape
{
    /// <summary>Uniform between the limits.</summary>
    Uniform,

    /// <summary>Triangular, with its peak at the listed value.</summary>
    Triangular,

    /// <summary>Normal about the listed value, the limits at two standard deviations and the tails beyond cut off; with
    /// unequal limits each side has its own.</summary>
    Normal,

    /// <summary>Normal in the logarithm, the limits at two standard deviations and the tails beyond cut off.</summary>
    LogNormal,
}
