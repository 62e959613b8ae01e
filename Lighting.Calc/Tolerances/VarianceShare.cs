using UnitsNet;

namespace Lighting.Calc;

/// <summary>Share of one part in the variance of a result.</summary>
internal sealed class VarianceShare
{
    internal VarianceShare(TolerancePart part, Ratio share) => (Part, Share) = (part, share);

    /// <summary>The part.</summary>
    public TolerancePart Part { get; }

    /// <summary>Its share of the variance, 0 to 1.</summary>
    public Ratio Share { get; }
}
