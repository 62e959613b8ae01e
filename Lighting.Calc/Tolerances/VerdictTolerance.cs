using UnitsNet;

namespace Lighting.Calc;

/// <summary>How often a verdict on the listed bike is also that on the bikes drawn.</summary>
/// <param name="Subject">What it is about: a fuse, a lamp, <c>charging</c>, <c>ride</c> or the bike.</param>
/// <param name="Verdict">The verdict, such as <c>suits</c> or <c>loses no more than allowed</c>.</param>
/// <param name="Probability">The share of the bikes drawn on which it holds, 0 to 1. Of a fuse whose dead short or surge on switching on
/// comes out differently at the limits of the spreads only the first 200 bikes are judged, which leaves the share off by up to 0.035 (one standard error).</param>
public sealed record VerdictTolerance(string Subject, string Verdict, Ratio Probability);
