namespace Lighting.Calc;

/// <summary>How a reading lies to a fault.</summary>
/// <param name="Evidence">The reading.</param>
/// <param name="Distance">Standard deviations from what the fault gives.</param>
/// <param name="Expected">What the fault gives.</param>
/// <param name="GainOverNothing">Logarithm of its likelihood over that of a healthy bike.</param>
internal readonly record struct ReadingFit(Evidence Evidence, double Distance, double Expected, double GainOverNothing);
