using UnitsNet;

namespace Lighting.Calc;

/// <summary>Share of one part in the variance of a result.</summary>
/// <param name="Part">The part.</param>
/// <param name="Share">Its share of the variance, 0 to 1.</param>
internal sealed record VarianceShare(TolerancePart Part, Ratio Share);
