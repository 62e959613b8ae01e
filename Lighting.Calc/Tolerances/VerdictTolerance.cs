using UnitsNet;

namespace Lighting.Calc;

/// <summary>Share of sampled bikes with the same verdict as the listed bike.</summary>
/// <param name="Subject">What it is about: a fuse, a lamp, <c>charging</c>, <c>ride</c> or the bike.</param>
/// <param name="Verdict">The verdict, such as <c>suits</c> or <c>loses no more than allowed</c>.</param>
/// <param name="Probability">The share of the sampled bikes on which it holds, 0 to 1. Where a fuse's dead short or
/// inrush comes out differently at the limits of the spreads, only the first 200 bikes are judged: the standard error
/// is then up to 0.035.</param>
internal sealed record VerdictTolerance(string Subject, string Verdict, Ratio Probability);
