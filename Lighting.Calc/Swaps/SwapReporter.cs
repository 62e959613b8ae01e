using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Solves a bike before and after a swap and puts both side by side.</summary>
internal sealed class SwapReporter(
    Bike before,
    Bike after,
    ImmutableArray<LampReplacement> replacements,
    CheckOptions options
)
{
    public SwapReport Report(CancellationToken cancel)
    {
        BikeReport was = BikeCheck.Evaluate(before, options, cancel),
            now = BikeCheck.Evaluate(after, options, cancel);
        ImmutableArray<PointPair> pairs =
        [
            .. was.Settings.Join(now.Settings, p => p.Setting, p => p.Setting, (b, a) => new PointPair(b, a)),
        ];
        var comparison = BikeComparison.Of(was, now, options.Fuses);
        ImmutableArray<FlasherChange> flashers = FlasherLoads.Of(before, after, pairs, options);
        ImmutableArray<LampResistor> resistors = FlasherLoads.Resistors(before, after, flashers);
        ImmutableArray<SneakFeed> sneaks = SneakFeeds.Of(after, pairs);
        var charging = ChargingComparison.Of(before, after, comparison.Lamps, pairs, options);
        cancel.ThrowIfCancellationRequested();
        var report = new SwapReport
        {
            Replacements = replacements,
            Comparison = comparison,
            Charging = charging.Balances,
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
}
