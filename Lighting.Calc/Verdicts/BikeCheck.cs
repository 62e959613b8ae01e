using System.Collections.Immutable;
using Lighting.Calc.Charging;
using Lighting.Calc.Fuses;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Verdicts;

/// <summary>The whole verdict on a bike: load, fuses, drops, charging and what the lists say against each other.</summary>
public static class BikeCheck
{
    /// <summary>Checks a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">What the check is told besides; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no circuit, its charging list is no curve, or the condition names what it does not have, leaves too many settings or none that can be solved.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its range.</exception>
    /// <exception cref="NetworkNotSolvedException">A stretch of the ride, or direct lighting in its heaviest setting, has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static BikeReport Of(Bike bike, CheckOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new CheckOptions();
        return Of(bike, new Wiring(bike, options.When), options, cancellation);
    }

    /// <summary>The same of a bike whose wiring, in the settings of the options, is known.</summary>
    internal static BikeReport Of(Bike bike, Wiring wiring, CheckOptions options, CancellationToken cancellation)
    {
        BikeSolution solution = BikeSolution.Of(bike, wiring, options.Supply, cancellation);
        if (solution.Points.IsEmpty)
            throw new ArgumentException($"No setting could be solved: {solution.NotSolved[0].Message}", nameof(bike));
        bool allAreSolved = solution.NotSolved.IsEmpty;
        SettingGroups groups = allAreSolved ? wiring.Groups : SettingGroups.Of(bike, [.. solution.Points.Select(p => p.Setting)]);
        var feeds = FeedScopes.Of(bike, groups, cancellation);
        ImmutableArray<OperatingPoint> distinct = OperatingPoint.FirstOfEachCurrents(solution.Points);
        ImmutableArray<FuseSuitability> fuses = FuseCheck.Of(feeds, solution.Points, distinct, options.Fuses);
        ImmutableArray<OperatingPoint?> worst = MeantLit.WorstOfEach(bike, solution.Points);
        ImmutableArray<DropLedger> drops = DropAnalysis.WorstOf(bike, worst);
        cancellation.ThrowIfCancellationRequested();
        bool isDirect = bike.Lighting == LightingSupply.Direct;
        ChargingReport? charging = bike.Charging.IsEmpty || isDirect ? null : ChargingSystem.WithLoads(bike, wiring.Switches, AverageLoads.Of(solution.Network, solution.Points, allAreSolved ? wiring.Places : Wiring.PlacesOf(solution.Points.Select(p => p.Setting))), options.Charging).Report(solution.Settings);
        DirectLightingReport? direct = bike.Charging.IsEmpty || !isDirect ? null : DirectLightingOf(bike, solution.Points);
        Finding[] findings =
        [
            .. solution.NotSolved,
            .. allAreSolved ? wiring.Review : WiringReview.Of(bike, groups),
            .. fuses.SelectMany(f => f.Findings),
            .. isDirect ? [] : UnfusedRuns.Findings(feeds, cancellation),
            .. LampFindings.Of(bike, distinct, worst),
            .. (charging?.Findings ?? direct?.Findings ?? []).Where(f => f.Severity != Severity.Note),
            .. NotIncluded(bike),
        ];
        return new BikeReport
        {
            Bike = bike,
            Network = solution.Network,
            SupplyVoltage = solution.Supply,
            Settings = solution.Points,
            Fuses = fuses,
            WorstDrops = drops,
            Charging = charging,
            DirectLighting = direct,
            Findings = [.. findings.OrderByDescending(f => f.Severity)],
        };
    }

    /// <summary>The direct lighting of a bike in its heaviest setting, over the speeds of its charging list.</summary>
    /// <param name="bike">A bike whose lamps a lighting coil feeds, with a charging list.</param>
    /// <param name="settings">Its operating points, one or more.</param>
    /// <exception cref="ArgumentException">The charging list is not that of one coil, no coil can be fitted to it, or the bike has no circuit; the message says why.</exception>
    /// <exception cref="NetworkNotSolvedException">The setting has no operating point.</exception>
    public static DirectLightingReport DirectLightingOf(Bike bike, IReadOnlyList<OperatingPoint> settings) =>
        DirectLighting.Of(bike, coilResistance: null).Report(settings.MaxBy(p => p.TotalCurrent.Amperes)!.Setting, bike.Charging.Select(c => c.Speed).Distinct());

    private static IEnumerable<Finding> NotIncluded(Bike bike)
    {
        if (!bike.HasNetwork)
            yield return new Finding(Severity.Note, "runs.csv", "there is no list of runs: lamps are taken straight on the battery, and drops are not included.");
        if (bike.Fuses.IsEmpty && bike.Lighting == LightingSupply.Battery)
            yield return new Finding(Severity.Caution, "fuses.csv", "no fuse is listed: whether one would suit is not checked.");
        if (bike.Charging.IsEmpty)
            yield return new Finding(Severity.Note, "charging.csv", "there is no charging curve: the balance is not included.");
    }
}
