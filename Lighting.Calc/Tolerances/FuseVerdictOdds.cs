using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How often a fuse's verdict holds: its load by all samples, dead shorts and switching on at the limits of all spreads together.</summary>
/// <remarks>
/// A short clears the worse and a cold start melts the less the more resistance and the fewer volts there are, and the smaller the
/// lamps. So two bikes bound all others: the weak one with every part at the limit to that side, and the strong one with every
/// part at the other. Where both come out alike, every bike between them does, and only the load is left to the samples. Where they
/// do not, the first samples are each judged in full. The rating of the wires has no spread here.
/// </remarks>
internal sealed class FuseVerdictOdds
{
    /// <summary>Samples judged in full where the limits disagree: the share is then off by up to 3.5 % (one standard error).</summary>
    private const int MostJudged = 200;

    private readonly UncertainBike _uncertain;
    private readonly ToleranceOptions _options;
    private readonly ImmutableArray<FuseSuitability> _weak;
    private readonly ImmutableArray<FuseSuitability> _strong;
    private readonly Lazy<ImmutableArray<ImmutableArray<FuseVerdict>>> _judged;

    public FuseVerdictOdds(UncertainBike uncertain, ToleranceOptions options, SampleRun run, CancellationToken cancel)
    {
        _uncertain = uncertain;
        _options = options;
        _weak = Judge([.. uncertain.Parts.Select(p => IsResistance(p.Kind) ? p.Spread.High : p.Spread.Low)]);
        _strong = Judge([.. uncertain.Parts.Select(p => IsResistance(p.Kind) ? p.Spread.Low : p.Spread.High)]);
        _judged = new(() => JudgeSamples(run, cancel));
    }

    /// <param name="fuse">Index of the fuse.</param>
    /// <param name="listed">Its verdict on the listed bike.</param>
    /// <param name="carries">Share of the bikes drawn on which it carries its load.</param>
    public Ratio Of(int fuse, FuseVerdict listed, Ratio carries)
    {
        FuseSuitability weak = _weak[fuse], strong = _strong[fuse];
        bool isLoadAlone = Clears(weak) && Clears(strong) && Survives(weak) && Survives(strong);
        if (isLoadAlone)
            return listed == FuseVerdict.Suits ? carries : Ratio.FromDecimalFractions(1 - carries.DecimalFractions);
        // A verdict on the wire or on a short does not ask about the load.
        if (weak.Verdict == listed && strong.Verdict == listed && !Clears(weak))
            return Ratio.FromPercent(100);
        return Ratio.FromDecimalFractions((double)_judged.Value.Count(v => v[fuse] == listed) / _judged.Value.Length);
    }

    // The verdict names a short before the load, so that one of the load means that the shorts clear.
    private static bool Clears(FuseSuitability fuse) => fuse.Verdict is FuseVerdict.Suits or FuseVerdict.Overloaded;

    private static bool Survives(FuseSuitability fuse) => fuse.InrushCheck?.Survives != false;

    private static bool IsResistance(PartKind kind) =>
        kind is PartKind.Wire or PartKind.WireTemperature or PartKind.Joint or PartKind.Contact or PartKind.Fuse or PartKind.BatteryResistance;

    private ImmutableArray<FuseSuitability> Judge(double[] values)
    {
        Bike bike = SampledBike.Of(_uncertain, values);
        BikeSolution solution = BikeSolution.Solve(bike, _options.When, ElectricPotential.FromVolts(_uncertain.SupplyVolts(values)));
        return FuseCheck.Evaluate(bike, solution.Points, _options.Fuses);
    }

    private ImmutableArray<ImmutableArray<FuseVerdict>> JudgeSamples(SampleRun run, CancellationToken cancel)
    {
        var verdicts = new ImmutableArray<FuseVerdict>[Math.Min(MostJudged, _options.Samples)];
        Parallel.For(0, verdicts.Length, new ParallelOptions { MaxDegreeOfParallelism = _options.Threads ?? -1, CancellationToken = cancel }, sample =>
        {
            var values = new double[_uncertain.Parts.Length];
            run.Draw(sample, values);
            verdicts[sample] = [.. Judge(values).Select(f => f.Verdict)];
        });
        return [.. verdicts];
    }
}
