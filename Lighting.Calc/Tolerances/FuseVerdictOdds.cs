using System.Collections.Immutable;
using Lighting.Calc.Fuses;
using Lighting.Calc.Harness;
using Lighting.Calc.Verdicts;
using UnitsNet;

namespace Lighting.Calc.Tolerances;

/// <summary>How often a fuse's verdict holds: its load by the samples, dead shorts and switching on at the limits of all spreads together.</summary>
/// <remarks>
/// A short clears the worse and a cold start melts the less the more resistance and the fewer volts there are, and the smaller the
/// lamps. So two bikes bound all others: the weak one with every part at the limit to that side, and the strong one with every
/// part at the other. Where both come out alike, every bike between them does. The rating of the wires has no spread here.
/// </remarks>
internal sealed class FuseVerdictOdds
{
    private readonly UncertainBike _uncertain;
    private readonly ToleranceOptions _options;
    private readonly ImmutableArray<FuseSuitability> _weak;
    private readonly ImmutableArray<FuseSuitability> _strong;

    public FuseVerdictOdds(UncertainBike uncertain, ToleranceOptions options)
    {
        _uncertain = uncertain;
        _options = options;
        _weak = AtLimits(isWeak: true);
        _strong = AtLimits(isWeak: false);
    }

    /// <param name="fuse">Index of the fuse.</param>
    /// <param name="listed">Its suitability on the listed bike.</param>
    /// <param name="carries">Share of the bikes drawn on which it carries its load.</param>
    /// <returns>Null where a short or the surge is not the same at both limits.</returns>
    public Ratio? Of(int fuse, FuseSuitability listed, Ratio carries)
    {
        FuseSuitability weak = _weak[fuse], strong = _strong[fuse];
        bool tooLarge = weak.Verdict == FuseVerdict.TooLargeForTheWire;
        bool weakClears = Clears(weak), strongClears = Clears(strong);
        if (tooLarge)
            return All(listed.Verdict == FuseVerdict.TooLargeForTheWire);
        if (weakClears != strongClears)
            return null;
        if (!weakClears)
            return All(listed.Verdict == FuseVerdict.WillNotClear);
        if (Survives(weak) != Survives(strong))
            return null;
        if (!Survives(weak))
            return All(listed.Verdict == FuseVerdict.TooSmall);
        return listed.Verdict == FuseVerdict.Suits ? carries : Ratio.FromDecimalFractions(1 - carries.DecimalFractions);
    }

    // The verdict names a short before the load, so that one of the load means that the shorts clear.
    private static bool Clears(FuseSuitability fuse) => fuse.Verdict is FuseVerdict.Suits or FuseVerdict.TooSmall;

    private static bool Survives(FuseSuitability fuse) => fuse.SwitchingOn?.Survives != false;

    private static Ratio All(bool holds) => Ratio.FromPercent(holds ? 100 : 0);

    private ImmutableArray<FuseSuitability> AtLimits(bool isWeak)
    {
        double[] values = [.. _uncertain.Parts.Select(p => isWeak == IsResistance(p.Kind) ? p.Spread.High : p.Spread.Low)];
        Bike bike = SampledBike.Of(_uncertain, values);
        BikeSolution solution = BikeSolution.Of(bike, _options.When, ElectricPotential.FromVolts(_uncertain.SupplyVolts(values)));
        return FuseCheck.Of(bike, solution.Points, _options.Fuses);
    }

    private static bool IsResistance(PartKind kind) =>
        kind is PartKind.Wire or PartKind.WireTemperature or PartKind.Joint or PartKind.Contact or PartKind.Fuse or PartKind.BatteryResistance;
}
