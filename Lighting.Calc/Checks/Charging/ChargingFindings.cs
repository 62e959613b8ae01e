using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Findings about a charging system.</summary>
internal sealed class ChargingFindings
{
    private const string Charging = "charging";
    private const string Battery = "battery";

    // Heat from which a regulator needs a heat sink and its rating matters: common practice, no source.
    private const double MuchHeatWatts = 20;

    private readonly List<Finding> _findings = [];
    private readonly ChargingSystem _system;

    public ChargingFindings(ChargingSystem system)
    {
        _system = system;
        AddList();
        AddVoltages();
    }

    public ImmutableArray<Finding> ToImmutable() => [.. _findings.OrderByDescending(f => f.Severity)];

    public void AddUnsolved(IReadOnlyList<NetworkNotSolvedException> exceptions)
    {
        if (exceptions is [var first, ..])
            Add(
                new(FindingKind.ChargingNotSolved, Severity.Fault, Charging)
                {
                    Setting = first.Setting,
                    FurtherSettings = exceptions.Count - 1,
                    Detail = first.Message,
                }
            );
    }

    public void AddBalances(ChargingBalance? worst, ChargingBalance? typical)
    {
        foreach (
            ChargingBalance balance in new[] { typical, worst }.OfType<ChargingBalance>().DistinctBy(b => b.Setting)
        )
        {
            BreakEven even = balance.BreakEven;
            switch (even.Outcome)
            {
                // What the usual setting does, the worst does too: one cause.
                case BreakEvenOutcome.Never
                    when balance == typical || typical?.BreakEven.Outcome != BreakEvenOutcome.Never:
                    AddBalance(
                        FindingKind.LoadsExceedOutput,
                        typical is null || balance == typical ? Severity.Fault : Severity.Caution,
                        balance.Demand,
                        _system.MostOutput(balance.Setting)
                    );
                    break;
                case BreakEvenOutcome.At:
                    AddBalance(FindingKind.BreakEvenReached, Severity.Note, even.Speed, null, balance.Demand);
                    break;
                case BreakEvenOutcome.BelowCurve:
                    AddBalance(FindingKind.BreakEvenBelowList, Severity.Note, even.Speed, null, balance.Demand);
                    break;
                case BreakEvenOutcome.NotKnown when !_system.Curves.IsEmpty:
                    AddBalance(FindingKind.BreakEvenUnknown, Severity.Caution, null);
                    break;
            }

            if (even.LostAgainAt is { } lost)
                AddBalance(FindingKind.OutputFallsBelowLoads, Severity.Caution, lost);

            void AddBalance(
                FindingKind kind,
                Severity severity,
                IQuantity? value,
                IQuantity? limit = null,
                params ImmutableArray<IQuantity> figures
            ) =>
                Add(
                    new(kind, severity, Charging)
                    {
                        Value = value,
                        Limit = limit,
                        Figures = figures,
                        Setting = balance.Setting,
                        Detail = balance == typical ? "Usual setting" : "Worst setting",
                    }
                );
        }
    }

    public void AddSurplus(ExcessChargingCurrent? surplus)
    {
        AddShuntHeat(surplus);
        if (
            surplus is null
            || _system.Regulator == RegulatorKind.Series
            || surplus.Point.OverchargeCurrent?.Amperes == 0
        )
            return;
        ElectricCurrent current = surplus.Point.OverchargeCurrent ?? surplus.Point.Net!.Value;
        ElectricCurrent? taken = ChargingConstants.FullBatteryCurrent(_system.Bike);
        bool much = taken is null || current > taken;
        (FindingKind kind, Severity severity) = _system.Regulator switch
        {
            RegulatorKind.NotStated => (FindingKind.SurplusOutput, much ? Severity.Caution : Severity.Note),
            RegulatorKind.None => (FindingKind.Overcharge, much ? Severity.Fault : Severity.Caution),
            _ => (FindingKind.ShuntLimitExceeded, much ? Severity.Fault : Severity.Caution),
        };
        Add(
            new(kind, severity, Battery)
            {
                Value = current,
                Limit = taken,
                Setting = surplus.Setting,
                Detail = RegulatorName,
                Figures = _system.Options.ShuntLimit is { } limit
                    ? [surplus.Point.Speed, limit]
                    : [surplus.Point.Speed],
            }
        );
    }

    private void AddShuntHeat(ExcessChargingCurrent? surplus)
    {
        if (
            _system.Bike.RegulatorRating is null
            && surplus is { Point: { ShuntHeat: { } heat, Net: { } net } point }
            && (double)heat.Watts > MuchHeatWatts
        )
            Add(
                new(FindingKind.RegulatorHeatUnrated, Severity.Caution, "regulator")
                {
                    Value = heat,
                    Setting = surplus.Setting,
                    Figures = [point.Speed, net],
                    Detail = RegulatorName,
                }
            );
    }

    public void AddRide(RideBalance? ride)
    {
        if (ride is null)
        {
            Add(new(FindingKind.NoRideList, Severity.Note, "ride"));
            return;
        }

        foreach (RideStretchBalance stretch in ride.Stretches)
        {
            string subject = stretch.Stretch.Stretch;
            if (stretch.Net is null)
                Add(
                    new(FindingKind.RideOutputUnknown, Severity.Caution, subject)
                    {
                        Value = stretch.Stretch.Speed,
                        Detail = Reason(stretch.Range),
                    }
                );
            if (stretch.Limit == StateOfChargeLimit.Flat)
                Add(new(FindingKind.BatteryFlat, Severity.Fault, subject) { Value = stretch.LimitAfter });
            if (stretch.Limit == StateOfChargeLimit.Full && ride.InitialStateOfCharge.DecimalFractions < 1)
                Add(new(FindingKind.BatteryFull, Severity.Note, subject) { Value = stretch.LimitAfter });
        }

        if (ride.NetCharge is { } net)
            Add(
                new(FindingKind.RideCharge, net.AmpereHours < 0 ? Severity.Caution : Severity.Note, "ride")
                {
                    Value = net,
                    Figures = ride.FinalStateOfCharge is { } end ? [ride.Duration, end] : [ride.Duration],
                }
            );
    }

    public void AddStanding(ImmutableArray<BatteryRunTime> times)
    {
        foreach (BatteryRunTime time in times.Where(t => t.Outcome == BatteryRunTimeOutcome.Reached))
            Add(
                new(FindingKind.BatteryRunTime, Severity.Note, Battery)
                {
                    Value = time.Time,
                    Setting = time.Setting,
                    Figures = [time.Load, time.From, time.To, time.VoltageThere],
                }
            );
        if (times.Any(t => t.Outcome == BatteryRunTimeOutcome.CapacityNotKnown))
            Add(new(FindingKind.CapacityNotStated, Severity.Note, Battery));
    }

    private void AddList()
    {
        if (_system.Bike.Lighting == LightingSupply.Direct)
            Add(new(FindingKind.NoBatteryToBalance, Severity.Caution, Charging));
        if (_system.Curves.IsEmpty)
            Add(new(FindingKind.NoChargingList, Severity.Note, Charging));
        if (_system.AssumedDuties is { IsEmpty: false } assumed)
            Add(
                new(FindingKind.DutyAssumed, Severity.Note, Charging) { Value = AverageDuty.Momentary, Parts = assumed }
            );
        foreach (ChargingCurve curve in _system.Curves)
        {
            string subject = curve.When.Terms.IsEmpty ? Charging : $"{Charging} ({curve.When})";
            if (curve.Falls)
                Add(new(FindingKind.OutputFalls, Severity.Caution, subject));
            if (curve.Points.Length == 1 && _system.Options.Model == ChargingModel.Curve)
                Add(
                    new(FindingKind.OneChargingPoint, Severity.Caution, subject)
                    {
                        Value = RotationalSpeed.FromRevolutionsPerMinute(curve.FirstRpm),
                    }
                );
        }

        foreach (PermanentMagnetFit fit in _system.Machines)
            AddFit(
                "Fitted machine (current and corner speed)",
                fit.Residuals,
                fit.Machine.MaximumCurrent,
                fit.Machine.CornerSpeed
            );
        foreach (AlternatorEquivalentFit fit in _system.Coils)
            AddFit(
                "Fitted coil (current and cut-in speed)",
                fit.Residuals,
                fit.Source.MaximumCurrent,
                fit.Source.SpeedFor(ElectricCurrent.Zero, fit.TerminalVoltage)!.Value
            );
    }

    private void AddFit(
        string what,
        ImmutableArray<FitResidual> residuals,
        ElectricCurrent limit,
        RotationalSpeed speed
    )
    {
        FitResidual worst = residuals.MaxBy(r => Math.Abs(r.Residual.Amperes))!;
        Add(
            new(FindingKind.ChargingFit, worst.IsPoor(limit) ? Severity.Caution : Severity.Note, Charging)
            {
                Value = worst.Residual,
                Figures = [limit, speed, worst.Point.Speed],
                Detail = what,
            }
        );
    }

    private void AddVoltages()
    {
        Bike bike = _system.Bike;
        double scale = bike.SystemVoltage.Volts / 12,
            charging = bike.ChargingVoltage.Volts;
        var low = ElectricPotential.FromVolts(ChargingConstants.LowestRegulatedVolts * scale);
        var high = ElectricPotential.FromVolts(ChargingConstants.HighestRegulatedVolts * scale);
        ElectricPotential full = LeadAcid.OpenCircuitVoltage(Ratio.FromPercent(100), bike.SystemVoltage);
        if (charging <= full.Volts)
            Add(
                new(FindingKind.ChargingVoltageTooLow, Severity.Fault, Charging)
                {
                    Value = bike.ChargingVoltage,
                    Limit = full,
                }
            );
        else if (charging < low.Volts - 1e-9)
            Add(
                new(FindingKind.ChargingVoltageLow, Severity.Caution, Charging)
                {
                    Value = bike.ChargingVoltage,
                    Limit = low,
                    Figures = [high],
                }
            );
        else if (charging > high.Volts + 1e-9)
            Add(
                new(FindingKind.ChargingVoltageHigh, Severity.Caution, Charging)
                {
                    Value = bike.ChargingVoltage,
                    Limit = high,
                    Figures = [low],
                }
            );
        if (LeadAcid.StateOfCharge(bike.BatteryVoltage, bike.SystemVoltage) is { DecimalFractions: < 0.9 } share)
            Add(
                new(FindingKind.BatteryNotFull, Severity.Note, Battery)
                {
                    Value = bike.BatteryVoltage,
                    Figures = [share, _system.Options.InitialStateOfCharge],
                }
            );
    }

    private string RegulatorName => _system.Bike.ZenerVoltage is null ? "shunt regulator" : "Zener diode";

    private static string Reason(OutputRange range) =>
        range switch
        {
            OutputRange.BelowCurve => "below the first point of the charging list",
            OutputRange.AboveCurve => "above the last point of the charging list",
            _ => "no charging list",
        };

    private void Add(Finding finding) => _findings.Add(finding);
}
