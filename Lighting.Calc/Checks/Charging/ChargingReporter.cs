using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Looks over all settings of a charging system.</summary>
internal static class ChargingReporter
{
    public static ChargingReport Report(
        ChargingSystem system,
        IReadOnlyList<Setting> settings,
        IReadOnlyList<Setting> standingIn
    )
    {
        var findings = new ChargingFindings(system);
        var balances = ImmutableArray.CreateBuilder<ChargingBalance>();
        var unsolved = new List<NetworkNotSolvedException>();
        foreach (Setting setting in settings)
        {
            try
            {
                balances.Add(system.BalanceIn(setting));
            }
            catch (NetworkNotSolvedException exception)
            {
                unsolved.Add(exception);
            }
        }

        findings.AddUnsolved(unsolved);
        Func<Setting, bool> mayRun = EngineRunning.Of(system.Bike);
        // Rounded, so that a switch that changes nothing does not win by the last digit of its load. With one output
        // for all settings the break-even speed rises with the demand.
        ChargingBalance? worst = system.IsConditional
            ? balances.MaxBy(b => (Grade(b.BreakEven), Math.Round(b.Demand.Amperes, 6)))
            : balances.MaxBy(b => Math.Round(b.Demand.Amperes, 6));
        Setting? longest = system
            .Bike.Ride.Where(s => s.Speed.RevolutionsPerMinute > 0)
            .GroupBy(s => SettingEnumeration.Held(system.Switches, s.When))
            .MaxBy(g => g.Sum(s => s.Duration.Seconds))
            ?.Key;
        ChargingBalance? typical = longest is null ? null : system.BalanceIn(longest);
        ExcessChargingCurrent? surplus = Excess(system, balances.Where(b => mayRun(b.Setting)));
        RideBalance? ride = system.Bike.Ride.IsEmpty ? null : system.Ride();
        ImmutableArray<BatteryRunTime> standing =
        [
            .. standingIn
                .Concat(new[] { typical, worst }.OfType<ChargingBalance>().Select(b => b.Setting))
                .Distinct()
                .SelectMany(s =>
                    new[] { Ratio.FromPercent(50), system.Options.NoStartStateOfCharge }.Select(to =>
                        system.Standing(s, to)
                    )
                ),
        ];
        findings.AddBalances(worst, typical);
        findings.AddSurplus(surplus);
        findings.AddRide(ride);
        findings.AddStanding(standing);
        return new ChargingReport
        {
            Balances = balances.ToImmutable(),
            Worst = worst,
            Typical = typical,
            Excess = surplus,
            Ride = ride,
            Standing = standing,
            Findings = findings.ToImmutable(),
        };
    }

    private static double Grade(BreakEven breakEven) =>
        breakEven.Outcome switch
        {
            BreakEvenOutcome.Never => double.PositiveInfinity,
            BreakEvenOutcome.At => Math.Round(breakEven.Speed!.Value.RevolutionsPerMinute, 3),
            BreakEvenOutcome.BelowCurve => 0,
            _ => -1,
        };

    private static ExcessChargingCurrent? Excess(ChargingSystem system, IEnumerable<ChargingBalance> balances)
    {
        ExcessChargingCurrent? largest = null;
        // A monotone curve has its largest value at one of its points.
        RotationalSpeed[] speeds =
        [
            .. system
                .Curves.SelectMany(c => c.KnotsRpm)
                .Distinct()
                .Order()
                .Select(n => RotationalSpeed.FromRevolutionsPerMinute(n)),
        ];
        // With one output for all settings the least load leaves most.
        foreach (
            ChargingBalance balance in system.IsConditional
                ? balances
                : balances.OrderBy(b => Math.Round(b.Load.Amperes, 6)).Take(1)
        )
            foreach (RotationalSpeed speed in speeds)
                if (
                    balance.At(speed) is { Net.Amperes: > 0 } point
                    && point.Net!.Value.Amperes > (largest?.Point.Net!.Value.Amperes ?? 0) + 1e-6
                )
                    largest = new ExcessChargingCurrent(balance.Setting, point);
        return largest;
    }
}
