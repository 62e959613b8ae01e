using UnitsNet;

namespace Lighting.Calc;

/// <summary>How much of a result's variance comes with one part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Share">Its share of the variance, 0 to 1.</param>
public sealed record VarianceShare(TolerancePart Part, Ratio Share);
