using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How often a fuse's verdict holds: its load by all samples, dead shorts and inrush at the limits of all
/// spreads together.</summary>
/// <remarks>
/// A short clears less well and a cold start heats a fuse less, the more resistance and the less voltage there is, and
/// the smaller the lamps. So two bikes bound all others: the weak one with every part at the limit to that side, and
/// the strong one with every part at the other. Where both come out alike, every bike between them does, and only the
/// load is left to the samples. Where they do not, the first samples are each judged in full. The rating of the wires
/// has no spread here.
/// </remarks>
internal sealed class FuseVerdictOdds
{
    /// <summary>Samples judged in full where the limits disagree: the standard error of the share is then up to 3.5
    /// %.</summary>
    private const int MostJudged = 200;

    private readonly SamplingPlan _plan;
    private readonly ImmutableArray<FuseSuitability> _weak;
    private readonly ImmutableArray<FuseSuitability> _strong;
    private readonly Lazy<ImmutableArray<FuseSuitability>[]> _judged;

    public FuseVerdictOdds(SamplingPlan plan, SampledBike[] drawn, CancellationToken cancellationToken)
    {
        _plan = plan;
        _weak = Judge([.. plan.Uncertain.Parts.Select(p => IsResistance(p.Kind) ? p.Spread.High : p.Spread.Low)]);
        _strong = Judge([.. plan.Uncertain.Parts.Select(p => IsResistance(p.Kind) ? p.Spread.Low : p.Spread.High)]);
        _judged = new(() =>
        {
            var judged = new ImmutableArray<FuseSuitability>[Math.Min(MostJudged, drawn.Length)];
            var threads = new ParallelOptions
            {
                MaxDegreeOfParallelism = plan.Options.Threads ?? -1,
                CancellationToken = cancellationToken,
            };
            Parallel.For(0, judged.Length, threads, sample => judged[sample] = Judge(drawn[sample].Values));
            return judged;
        });
    }

    /// <param name="fuse">Index of the fuse.</param>
    /// <param name="listed">Its verdict on the listed bike.</param>
    /// <param name="carries">Share of the sampled bikes on which it carries its load.</param>
    public Ratio Of(int fuse, FuseVerdict listed, Ratio carries)
    {
        FuseSuitability weak = _weak[fuse],
            strong = _strong[fuse];
        bool isLoadAlone = Clears(weak) && Clears(strong) && Survives(weak) && Survives(strong);
        if (isLoadAlone)
            return listed == FuseVerdict.Suits ? carries : Ratio.FromDecimalFractions(1 - carries.DecimalFractions);
        // A verdict on the wire or on a short does not ask about the load.
        if (weak.Verdict == listed && strong.Verdict == listed && !Clears(weak))
            return Ratio.FromPercent(100);
        return Ratio.FromDecimalFractions(
            (double)_judged.Value.Count(v => v[fuse].Verdict == listed) / _judged.Value.Length
        );
    }

    // The verdict names a short before the load, so that one of the load means that the shorts clear.
    private static bool Clears(FuseSuitability fuse) => fuse.Verdict is FuseVerdict.Suits or FuseVerdict.Overloaded;

    private static bool Survives(FuseSuitability fuse) => fuse.InrushCheck?.Survives != false;

    private static bool IsResistance(PartKind kind) =>
        kind
            is PartKind.Wire
                or PartKind.WireTemperature
                or PartKind.Joint
                or PartKind.Contact
                or PartKind.Fuse
                or PartKind.BatteryResistance;

    private ImmutableArray<FuseSuitability> Judge(double[] values)
    {
        Bike bike = _plan.Uncertain.With(values);
        return FuseCheck.Evaluate(
            bike,
            BikeSolution.Solve(bike, _plan.Uncertain.CheckOptions(_plan.Options), CancellationToken.None).FusePoints,
            _plan.Options.Check.Fuses
        );
    }
}
