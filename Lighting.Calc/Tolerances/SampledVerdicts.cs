using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Share of sampled bikes on which each verdict on the listed bike holds.</summary>
internal sealed class SampledVerdicts(SamplingPlan plan, SampledBike listed, SampledBike[] drawn)
{
    private const double Tolerance = 1e-9;

    private readonly List<Func<SampledBike, bool>> _rules = [];

    public IEnumerable<VerdictTolerance> Of(ImmutableArray<FuseSuitability> fuses, CancellationToken cancellationToken)
    {
        Bike bike = plan.Network.Bike;
        var odds = new Lazy<FuseVerdictOdds>(() => new FuseVerdictOdds(plan, drawn, cancellationToken));
        for (int i = 0; i < fuses.Length; i++)
        {
            int fuse = i;
            double usable = fuses[i].Steady.UsableCurrent.Amperes + Tolerance,
                peak = fuses[i].Steady.PeakLimit.Amperes;
            FuseStyle style = fuses[i].Fuse.Style;
            double rating = fuses[i].ContinuousRating.Amperes;
            Ratio carries = Share(
                Rule(b =>
                    b.ContinuousAmperes[fuse] <= usable
                    && (
                        b.FuseAmperes[fuse] <= peak + Tolerance
                        || FuseJudge.PeakHeldFor(style, rating, peak, b.FuseAmperes[fuse])
                            is { Seconds: >= ContinuousLoad.HeldSeconds }
                    )
                )
            );
            yield return new VerdictTolerance(
                fuses[i].Fuse.Name,
                fuses[i].VerdictText,
                odds.Value.Of(i, fuses[i].Verdict, carries)
            );
        }

        foreach (int lamp in plan.Lamps)
        {
            string name = bike.Lamps[lamp].Lamp;
            LampSpecification specification = bike.Lamps[lamp].Specification;
            bool isAdvice = DropLimit.Of(bike, bike.Lamps[lamp], bike.SystemVoltage).IsAdvice;
            if (bike.HasNetwork && !isAdvice)
            {
                Func<SampledBike, bool> drops = Rule(b =>
                    !DropLimit
                        .Of(bike, bike.Lamps[lamp], ElectricPotential.FromVolts(b.MostDropOf[lamp]))
                        .IsExceededBy(Ratio.FromDecimalFractions(b.MostDrop[lamp]))
                );
                yield return Verdict(name, drops, "loses no more than allowed", "loses more than allowed");
            }

            double most = LampChecks.OverVoltsRatio * specification.ReferenceVoltage.Volts;
            if (specification.Type is LampType.Filament or LampType.Halogen)
                yield return Verdict(name, Rule(b => b.MostVolts[lamp] <= most), "stands its voltage", "burns out");
            else if (specification.Type == LampType.Led)
                yield return Verdict(
                    name,
                    Rule(b => b.LeastVolts[lamp] >= specification.MinimumVoltage!.Value.Volts),
                    "its driver holds its power",
                    "its driver drops out"
                );
        }

        if (!double.IsNaN(listed.BreakEvenRpm))
            yield return Verdict(
                "charging",
                Rule(b => double.IsFinite(b.BreakEvenRpm)),
                "the load is covered at some speed of the curve",
                "the load is covered at no speed of the curve"
            );
        if (!double.IsNaN(listed.RideAmpereHours))
            yield return Verdict(
                "ride",
                Rule(b => b.RideAmpereHours >= 0),
                "does not drain the battery",
                "drains the battery"
            );
        yield return Verdict(
            "the bike",
            b => _rules.TrueForAll(r => r(b)),
            "fuses, voltage drop, lamps and charging suit",
            "a fuse, a voltage drop, a lamp or the charging does not suit"
        );
    }

    private Func<SampledBike, bool> Rule(Func<SampledBike, bool> holds)
    {
        _rules.Add(holds);
        return holds;
    }

    private VerdictTolerance Verdict(string subject, Func<SampledBike, bool> holds, string good, string bad) =>
        holds(listed)
            ? new VerdictTolerance(subject, good, Share(holds))
            : new VerdictTolerance(subject, bad, Ratio.FromDecimalFractions(1 - Share(holds).DecimalFractions));

    private Ratio Share(Func<SampledBike, bool> holds) =>
        Ratio.FromDecimalFractions((double)drawn.Count(holds) / drawn.Length);
}
