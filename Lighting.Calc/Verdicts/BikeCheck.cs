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
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="ArgumentException">The condition names what the bike does not have, or leaves too many settings or none that can be solved.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static BikeReport Of(Bike bike, CheckOptions? options = null, CancellationToken cancel = default)
    {
        options ??= new CheckOptions();
        BikeSolution solution = BikeSolution.Of(bike, options.When, options.Supply, cancel);
        if (solution.Points.IsEmpty)
            throw new ArgumentException($"No setting could be solved: {solution.NotSolved[0].Message}", nameof(bike));
        ImmutableArray<Setting> settings = [.. solution.Points.Select(p => p.Setting)];
        ImmutableArray<FuseSuitability> fuses = FuseCheck.Of(bike, solution.Points, options.Fuses);
        ImmutableArray<DropLedger> drops = DropAnalysis.WorstOf(bike, solution.Points);
        cancel.ThrowIfCancellationRequested();
        ChargingSystem? charging = bike.Charging.IsEmpty ? null : solution.ChargingWith(options.Charging);
        ChargingBalance? balance = charging is null ? null : settings.Select(charging.BalanceIn).MaxBy(b => b.Load.Amperes);
        RideBalance? ride = charging is null || bike.Ride.IsEmpty ? null : charging.Ride();
        Finding[] findings =
        [
            .. solution.NotSolved,
            .. WiringReview.Of(bike, settings),
            .. fuses.SelectMany(f => f.Findings),
            .. UnfusedRuns.Findings(bike, settings),
            .. LampFindings.Of(bike, solution.Points),
            .. ChargingFindings.Of(balance, ride),
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
            Charging = balance,
            Ride = ride,
            Findings = [.. findings.OrderByDescending(f => f.Severity)],
        };
    }

    private static IEnumerable<Finding> NotIncluded(Bike bike)
    {
        if (!bike.HasNetwork)
            yield return new Finding(Severity.Note, "runs.csv", "there is no list of runs: lamps are taken straight on the battery, and drops are not included.");
        if (bike.Fuses.IsEmpty)
            yield return new Finding(Severity.Caution, "fuses.csv", "no fuse is listed: whether one would suit is not checked.");
        if (bike.Charging.IsEmpty)
            yield return new Finding(Severity.Note, "charging.csv", "there is no charging curve: the balance is not included.");
    }
}
