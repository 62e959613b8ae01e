using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Solves a bike before and after a swap and puts both side by side.</summary>
internal sealed class SwapReporter(
    Bike before,
    Bike after,
    ImmutableArray<LampReplacement> replacements,
    SwapOptions options
)
{
    public SwapReport Report(CancellationToken cancel)
    {
        BikeReport was = BikeCheck.Evaluate(before, options.Check, cancel),
            now = BikeCheck.Evaluate(after, options.Check, cancel);
        ImmutableArray<PointPair> pairs =
        [
            .. was.Settings.Join(now.Settings, p => p.Setting, p => p.Setting, (b, a) => new PointPair(b, a)),
        ];
        ImmutableArray<LampChange> lamps = [.. before.Lamps.Select((l, i) => ChangeOf(l, i, pairs))];
        ImmutableArray<FlasherChange> flashers = FlasherLoads.Of(before, after, pairs, options);
        ImmutableArray<LampResistor> resistors = FlasherLoads.Resistors(before, after, flashers);
        ImmutableArray<SneakFeed> sneaks = SneakFeeds.Of(after, pairs);
        var charging = ChargingComparison.Of(before, after, lamps, pairs, options.Check);
        cancel.ThrowIfCancellationRequested();
        var report = new SwapReport
        {
            Replacements = replacements,
            Before = was,
            After = now,
            Lamps = lamps,
            Circuits = [.. before.Lamps.Select(l => l.Circuit).Distinct(Name.Comparer).Select(c => ChangeOf(c, pairs))],
            Fuses = [.. was.Fuses.Zip(now.Fuses, (b, a) => new FuseChange(b, a))],
            WorstDropBefore = Worst(was),
            WorstDropAfter = Worst(now),
            Charging = charging.Balances,
            RideBefore = was.Charging?.Ride,
            RideAfter = now.Charging?.Ride,
            Excess = charging.Excess,
            Standing = charging.Standing,
            Flashers = flashers,
            Resistors = resistors,
            SneakFeeds = sneaks,
            Findings = [],
        };
        report.Findings =
        [
            .. new SwapFindings(before, after, report, pairs, options).All().OrderByDescending(f => f.Severity),
        ];
        return report;
    }

    private LampChange ChangeOf(FittedLamp lamp, int index, ImmutableArray<PointPair> pairs)
    {
        bool replaced = replacements.Any(r => Name.Equal(r.Lamp, lamp.Lamp));
        PointPair? worst =
            pairs.Where(p => p.IsLitBefore(index)).MinBy(p => Math.Abs(p.Before.Lamps[index].Voltage.Volts))
            ?? pairs.Where(p => p.IsLitAfter(index)).MinBy(p => Math.Abs(p.After.Lamps[index].Voltage.Volts));
        return new LampChange(
            lamp,
            replaced,
            worst?.Before.Setting,
            worst?.Before.Lamps[index],
            worst?.After.Lamps[index]
        );
    }

    private static CircuitChange ChangeOf(string circuit, ImmutableArray<PointPair> pairs)
    {
        (double amperesBefore, double wattsBefore) = Most(circuit, pairs.Select(p => p.Before));
        (double amperesAfter, double wattsAfter) = Most(circuit, pairs.Select(p => p.After));
        return new CircuitChange(
            circuit,
            ElectricCurrent.FromAmperes(amperesBefore),
            ElectricCurrent.FromAmperes(amperesAfter),
            Power.FromWatts(wattsBefore),
            Power.FromWatts(wattsAfter)
        );
    }

    private static (double Amperes, double Watts) Most(string circuit, IEnumerable<OperatingPoint> points) =>
        points
            .Select(p => p.Lamps.Where(l => Name.Equal(l.Lamp.Circuit, circuit)))
            .Select(l => (Amperes: l.Sum(s => Math.Abs(s.Current.Amperes)), Watts: l.Sum(s => (double)s.Power.Watts)))
            .DefaultIfEmpty()
            .MaxBy(s => s.Amperes);

    private static VoltageDropBreakdown? Worst(BikeReport report) =>
        report.WorstDrops.MaxBy(d => d.Lamp.Drop!.Value.DecimalFractions);
}
