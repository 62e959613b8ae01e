using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Counts charge in and out along a ride.</summary>
internal sealed class RideCounter(ChargingSystem system)
{
    public RideBalance Count(ImmutableArray<RideStretch> ride)
    {
        double? capacity = system.Bike.BatteryCapacity is { AmpereHours: > 0 } c ? c.AmpereHours : null;
        double? share = capacity is null ? null : system.Options.InitialStateOfCharge.DecimalFractions;
        double? total = 0;
        var stretches = ImmutableArray.CreateBuilder<RideStretchBalance>(ride.Length);
        foreach (RideStretch stretch in ride)
        {
            RideStretchBalance balance = Balance(stretch, capacity, share);
            stretches.Add(balance);
            share = balance.StateOfCharge?.DecimalFractions;
            total += balance.NetCharge?.AmpereHours;
        }

        return new RideBalance
        {
            Stretches = stretches.MoveToImmutable(),
            InitialStateOfCharge = system.Options.InitialStateOfCharge,
            Duration = Duration.FromHours(ride.Sum(s => s.Duration.Hours)),
            NetCharge = total is { } hours ? ElectricCharge.FromAmpereHours(hours) : null,
        };
    }

    private RideStretchBalance Balance(RideStretch stretch, double? capacityAmpereHours, double? share)
    {
        Setting setting = SettingEnumeration.Held(system.Switches, stretch.When);
        ChargingOutput output = system.OutputAt(stretch.Speed, setting);
        ElectricCurrent demand =
            output.Range == OutputRange.Standing
                ? system.StandingLoad(setting, share ?? system.Options.InitialStateOfCharge.DecimalFractions)
                : system.RunningDemand(setting);
        ElectricCurrent? net = output.Current - demand;
        double hours = stretch.Duration.Hours;
        double? gained = net is { } n
            ? n.Amperes * hours * (n.Amperes > 0 ? system.Options.ChargeEfficiency.DecimalFractions : 1)
            : null;
        double? end = share + gained / capacityAmpereHours;
        StateOfChargeLimit limit = end switch
        {
            > 1 => StateOfChargeLimit.Full,
            < 0 => StateOfChargeLimit.Flat,
            _ => StateOfChargeLimit.None,
        };
        double bound = limit == StateOfChargeLimit.Full ? 1 : 0;
        return new RideStretchBalance
        {
            Stretch = stretch,
            Demand = demand,
            Output = output.Current,
            Range = output.Range,
            Net = net,
            NetCharge = gained is { } charge ? ElectricCharge.FromAmpereHours(charge) : null,
            StateOfCharge = end is { } e ? Ratio.FromDecimalFractions(Math.Clamp(e, 0, 1)) : null,
            Limit = limit,
            LimitAfter =
                limit == StateOfChargeLimit.None
                    ? null
                    : Duration.FromHours(hours * ((bound - share) / (end - share))!.Value),
        };
    }
}
