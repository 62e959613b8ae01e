using UnitsNet;

namespace Lighting.Calc;

/// <summary>Share of sampled bikes with the same verdict as the listed bike.</summary>
internal sealed class VerdictTolerance
{
    internal VerdictTolerance(string subject, string verdict, Ratio probability) =>
        (Subject, Verdict, Probability) = (subject, verdict, probability);

    /// <summary>What it is about: a fuse, a lamp, <c>charging</c>, <c>ride</c> or the bike.</summary>
    public string Subject { get; }

    /// <summary>The verdict, such as <c>suits</c> or <c>loses no more than allowed</c>.</summary>
    public string Verdict { get; }

    /// <summary>The share of the sampled bikes on which it holds, 0 to 1.</summary>
    /// <remarks>Where a fuse's dead short or inrush comes out differently at the limits of the spreads, only the first
    /// 200 bikes are judged: the standard error is then up to 0.035.</remarks>
    public Ratio Probability { get; }
}
