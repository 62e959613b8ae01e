using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Charging and standing before and after, in the settings worth a line.</summary>
internal sealed record ChargingComparison(
    ImmutableArray<Change<ChargingBalance>> Balances,
    ExcessCurrentChange? Excess,
    ImmutableArray<Change<BatteryRunTime>> Standing
)
{
    public static ChargingComparison Of(
        Bike before,
        Bike after,
        ImmutableArray<LampChange> lamps,
        ImmutableArray<PointPair> pairs,
        CheckOptions options
    )
    {
        if (before.Lighting == LightingSupply.Direct)
            return new ChargingComparison([], null, []);
        ChargingSystem was = ChargingSystem.Of(before, options.Charging),
            now = ChargingSystem.Of(after, options.Charging);
        Setting heaviest = pairs.MaxBy(p => AverageLoads.Of(p.Before).Amperes)!.Before.Setting;
        ImmutableArray<Setting> riding =
        [
            .. before.Ride.Select(r => SettingEnumeration.Held(before, r.When)).Append(heaviest).Distinct(),
        ];
        bool hasCurve = !before.Charging.IsEmpty;
        ImmutableArray<Change<ChargingBalance>> balances = hasCurve
            ? [.. riding.Select(s => new Change<ChargingBalance>(was.BalanceIn(s), now.BalanceIn(s)))]
            : [];
        return new ChargingComparison(
            balances,
            hasCurve ? MostSurplus(before, balances, was) : null,
            before.BatteryCapacity is null
                ? []
                :
                [
                    .. StandingSettings(before, lamps, pairs, heaviest, options)
                        .SelectMany(s => StandingIn(s, was, now, options)),
                ]
        );
    }

    /// <summary>At the speeds of the ride where there is one, else over the curve's speeds.</summary>
    private static ExcessCurrentChange? MostSurplus(
        Bike bike,
        ImmutableArray<Change<ChargingBalance>> balances,
        ChargingSystem charging
    )
    {
        var places = bike.Ride.IsEmpty
            ? balances.SelectMany(b => charging.Grid().Select(speed => (Balance: b, Speed: speed)))
            : bike.Ride.Select(r =>
                (Balance: balances.First(b => b.Before.Setting.Equals(SettingEnumeration.Held(bike, r.When))), r.Speed)
            );
        return places
            .Select(p => new ExcessCurrentChange(
                p.Balance.Before.Setting,
                p.Balance.Before.At(p.Speed),
                p.Balance.After.At(p.Speed)
            ))
            .Where(c => c.After.Net is { Amperes: > 0 })
            .MaxBy(c => c.After.Net!.Value.Amperes);
    }

    /// <summary>Parking and full lights: of the settings with a replaced lamp lit and no momentary switch held, the
    /// lightest and the heaviest.</summary>
    private static IEnumerable<Setting> StandingSettings(
        Bike bike,
        ImmutableArray<LampChange> lamps,
        ImmutableArray<PointPair> pairs,
        Setting heaviest,
        CheckOptions options
    )
    {
        var momentary = new MomentarySwitches(bike, options.Fuses.MomentarySwitches);
        int[] replaced = [.. Enumerable.Range(0, lamps.Length).Where(i => lamps[i].IsReplaced)];
        PointPair[] lit =
        [
            .. pairs.Where(p => replaced.Any(p.IsLitBefore) && momentary.AreAtRest(p.Before.Setting)),
        ];
        if (lit.Length == 0)
            return [heaviest];
        return new[]
        {
            lit.MinBy(p => AverageLoads.Of(p.Before).Amperes)!.Before.Setting,
            lit.MaxBy(p => AverageLoads.Of(p.Before).Amperes)!.Before.Setting,
        }.Distinct();
    }

    private static IEnumerable<Change<BatteryRunTime>> StandingIn(
        Setting setting,
        ChargingSystem was,
        ChargingSystem now,
        CheckOptions options
    )
    {
        foreach (Ratio to in new[] { Ratio.FromPercent(50), options.Charging.NoStartStateOfCharge })
            yield return new Change<BatteryRunTime>(was.Standing(setting, to), now.Standing(setting, to));
    }
}
