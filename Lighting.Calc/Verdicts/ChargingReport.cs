using System.Collections.Immutable;
using Lighting.Calc.Charging;
using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.Verdicts;

/// <summary>The charging balance in the settings worth a line, over engine speed, over the ride and standing.</summary>
public sealed record ChargingReport
{
    private const int MostBalances = 8;

    /// <summary>The bike.</summary>
    public required Bike Bike { get; init; }

    /// <summary>The engine speeds of <see cref="ChargingBalance.Over"/>.</summary>
    public required ImmutableArray<RotationalSpeed> Grid { get; init; }

    /// <summary>The balances, heaviest average load first, one for each different load.</summary>
    public required ImmutableArray<ChargingBalance> Balances { get; init; }

    /// <summary>The ride; null without <c>ride.csv</c>.</summary>
    public required RideBalance? Ride { get; init; }

    /// <summary>How long each of the settings stands on the battery: to half and to no start.</summary>
    public required ImmutableArray<StandingTime> Standing { get; init; }

    /// <summary>What was found.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Whether nothing was found against the charging system.</summary>
    public bool Suits => Findings.All(f => f.Severity != Severity.Fault);

    /// <summary>Draws the report.</summary>
    /// <param name="solution">The bike solved in its settings.</param>
    /// <param name="options">How charging is judged.</param>
    public static ChargingReport Of(BikeSolution solution, ChargingOptions options)
    {
        ChargingSystem charging = solution.ChargingWith(options);
        Bike bike = solution.Network.Bike;
        ImmutableArray<ChargingBalance> balances =
        [
            .. solution.Points.Select(p => charging.BalanceIn(p.Setting))
                .GroupBy(b => Math.Round(b.Load.Amperes, 6)).Select(g => g.First())
                .OrderByDescending(b => b.Load.Amperes).Take(MostBalances),
        ];
        RideBalance? ride = bike.Ride.IsEmpty ? null : charging.Ride();
        return new ChargingReport
        {
            Bike = bike,
            Grid = charging.Grid(),
            Balances = balances,
            Ride = ride,
            Standing =
            [
                .. balances.Where(b => b.Load.Amperes > 0).SelectMany(b => new[]
                {
                    charging.Standing(b.Setting, Ratio.FromPercent(50)), charging.Standing(b.Setting, options.NoStartStateOfCharge),
                }),
            ],
            Findings = [.. ChargingFindings.Of(balances.FirstOrDefault(), ride)],
        };
    }
}
