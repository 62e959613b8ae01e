using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts what is found about a charging system into plain words.</summary>
internal sealed class ChargingFindings
{
    private const string Charging = "charging";
    private const string Battery = "battery";

    private readonly List<Finding> _findings = [];
    private readonly ChargingSystem _system;

    public ChargingFindings(ChargingSystem system)
    {
        _system = system;
        AddList();
        AddVolts();
    }

    public ImmutableArray<Finding> ToImmutable() => [.. _findings.OrderByDescending(f => f.Severity)];

    public void AddUnsolved(Setting setting, NetworkNotSolvedException exception) =>
        Add(Severity.Fault, Charging, $"{setting}: no balance, since the harness has no operating point there: {exception.Message}");

    public void AddBalances(ChargingBalance? worst, ChargingBalance? typical)
    {
        foreach (ChargingBalance balance in new[] { typical, worst }.OfType<ChargingBalance>().DistinctBy(b => b.Setting))
        {
            string subject = balance == typical ? $"usual setting ({balance.Setting})" : $"worst setting ({balance.Setting})";
            BreakEven even = balance.BreakEven;
            switch (even.Outcome)
            {
                case BreakEvenOutcome.Never:
                    Add(typical is null || balance == typical ? Severity.Fault : Severity.Caution, Charging, $"{subject}: the loads take {balance.Demand.Amperes.Text("0.0")} A on average, more than the charging system gives at any speed that is known; the battery is emptied while riding.");
                    break;
                case BreakEvenOutcome.At:
                    Add(Severity.Note, Charging, $"{subject}: the loads take {balance.Demand.Amperes.Text("0.0")} A on average; the battery gains from {even.Speed!.Value.RevolutionsPerMinute.Text("0")} rpm on.");
                    break;
                case BreakEvenOutcome.BelowCurve:
                    Add(Severity.Note, Charging, $"{subject}: the loads take {balance.Demand.Amperes.Text("0.0")} A on average; the battery gains already at {even.Speed!.Value.RevolutionsPerMinute.Text("0")} rpm, the slowest point of the charging list.");
                    break;
                case BreakEvenOutcome.NotKnown when !_system.Curves.IsEmpty:
                    Add(Severity.Caution, Charging, $"{subject}: the curves of the charging list have no speeds in common, so that the break-even speed is not known.");
                    break;
            }

            if (even.LostAgainAt is { } lost)
                Add(Severity.Caution, Charging, $"{subject}: above {lost.RevolutionsPerMinute.Text("0")} rpm the falling output no longer covers the loads.");
        }
    }

    public void AddSurplus(ExcessChargingCurrent? surplus)
    {
        if (surplus is null || _system.Options.Regulator == RegulatorKind.Series || surplus.Point.OverchargeCurrent?.Amperes == 0)
            return;
        double amperes = (surplus.Point.OverchargeCurrent ?? surplus.Point.Net!.Value).Amperes;
        double? share = _system.Bike.BatteryCapacity is { AmpereHours: > 0 } capacity ? amperes / capacity.AmpereHours : null;
        bool much = share is null or > ChargingConstants.FullBatteryAmperesPerAmpereHour;
        string rate = share is { } s
            ? $"{s.Text("0.00")} A for each Ah of the battery; a full one takes about {ChargingConstants.FullBatteryAmperesPerAmpereHour.Text("0.00")} without gassing (common practice)"
            : "the battery's capacity is not known";
        string where = $"With {surplus.Setting} at {surplus.Point.Speed.RevolutionsPerMinute.Text("0")} rpm";
        switch (_system.Options.Regulator)
        {
            case RegulatorKind.NotStated:
                Add(much ? Severity.Caution : Severity.Note, Battery, $"{where} {amperes.Text("0.0")} A are over ({rate}): a regulator has to keep them out of a full battery; none is stated.");
                break;
            case RegulatorKind.None:
                Add(much ? Severity.Fault : Severity.Caution, Battery, $"{where} {amperes.Text("0.0")} A go into a full battery, for there is no regulator ({rate}): overcharge.");
                break;
            default:
                Add(much ? Severity.Fault : Severity.Caution, Battery, $"{where} {amperes.Text("0.0")} A more than the shunt regulator's {_system.Options.ShuntLimit!.Value.Amperes.Text("0.0")} A go into a full battery ({rate}): overcharge.");
                break;
        }
    }

    public void AddRide(RideBalance? ride)
    {
        if (ride is null)
        {
            Add(Severity.Note, "ride", "There is no ride list, so that no ride is balanced and no usual setting is known.");
            return;
        }

        foreach (RideStretchBalance stretch in ride.Stretches)
        {
            string subject = stretch.Stretch.Stretch;
            if (stretch.Net is null)
                Add(Severity.Caution, subject, $"At {stretch.Stretch.Speed.RevolutionsPerMinute.Text("0")} rpm the output is not known ({Reason(stretch.Output.Range)}), and so is the ride's total.");
            if (stretch.Limit == StateOfChargeLimit.Flat)
                Add(Severity.Fault, subject, $"The battery is flat {stretch.LimitAfter!.Value.Minutes.Text("0")} min into it.");
            if (stretch.Limit == StateOfChargeLimit.Full && ride.InitialStateOfCharge.DecimalFractions < 1)
                Add(Severity.Note, subject, $"The battery is full {stretch.LimitAfter!.Value.Minutes.Text("0")} min into it.");
        }

        if (ride.NetCharge is { } net)
            Add(net.AmpereHours < 0 ? Severity.Caution : Severity.Note, "ride",
                $"Over {ride.Duration.Minutes.Text("0")} min the battery {(net.AmpereHours < 0 ? "loses" : "could gain")} {Math.Abs(net.AmpereHours).Text("0.00")} Ah{(ride.FinalStateOfCharge is { } end ? $" and ends at {end.Percent.Text("0")} %" : "")}.");
    }

    public void AddStanding(ImmutableArray<BatteryRunTime> times)
    {
        foreach (BatteryRunTime time in times.Where(t => t.Outcome == BatteryRunTimeOutcome.Reached))
            Add(Severity.Note, Battery, $"Standing with {time.Setting} ({time.Load.Amperes.Text("0.0")} A) it falls from {time.From.Percent.Text("0")} % to {time.To.Percent.Text("0")} % ({time.VoltageThere.Volts.Text("0.00")} V at rest) in {(time.Time!.Value.Hours < 2 ? $"{time.Time.Value.Minutes.Text("0")} min" : $"{time.Time.Value.Hours.Text("0.0")} h")}.");
        if (times.Any(t => t.Outcome == BatteryRunTimeOutcome.CapacityNotKnown))
            Add(Severity.Note, Battery, "Its capacity is not stated, so that no standing time is known.");
    }

    private void AddList()
    {
        if (_system.Bike.Lighting == LightingSupply.Direct)
            Add(Severity.Caution, Charging, "The lamps are fed by the lighting coil directly; what is balanced here would hold only with a battery and a rectifier.");
        if (_system.Curves.IsEmpty)
            Add(Severity.Note, Charging, "There is no charging list, so that output, balance and break-even speed are not known.");
        foreach (ChargingCurve curve in _system.Curves)
        {
            string subject = curve.When.Terms.IsEmpty ? Charging : $"{Charging} ({curve.When})";
            if (curve.Falls)
                Add(Severity.Caution, subject, "The output falls somewhere as the engine speeds up; few machines do so: check the list.");
            if (curve.Points.Length == 1 && _system.Options.Model == ChargingModel.Curve)
                Add(Severity.Caution, subject, $"The list has one point, {curve.FirstRpm.Text("0")} rpm; the output is known there alone.");
        }

        foreach (PermanentMagnetFit fit in _system.Machines)
            AddFit($"The fitted machine tends to {fit.Machine.MaximumCurrent.Amperes.Text("0.0")} A with its corner at {fit.Machine.CornerSpeed.RevolutionsPerMinute.Text("0")} rpm", fit.Residuals, fit.Machine.MaximumCurrent);
        foreach (AlternatorEquivalentFit fit in _system.Coils)
            AddFit($"The fitted coil cuts in at {fit.Source.SpeedFor(ElectricCurrent.Zero, fit.TerminalVoltage)!.Value.RevolutionsPerMinute.Text("0")} rpm and tends to {fit.Source.MaximumCurrent.Amperes.Text("0.0")} A", fit.Residuals, fit.Source.MaximumCurrent);
    }

    private void AddFit(string what, ImmutableArray<FitResidual> residuals, ElectricCurrent limit)
    {
        FitResidual worst = residuals.MaxBy(r => Math.Abs(r.Residual.Amperes))!;
        bool poor = worst.IsPoor(limit);
        Add(poor ? Severity.Caution : Severity.Note, Charging, $"{what}; the farthest point, {worst.Point.Speed.RevolutionsPerMinute.Text("0")} rpm, is {worst.Residual.Amperes.Text("+0.00;-0.00;0.00")} A from it{(poor ? ": it does not describe the list well" : "")}.");
    }

    private void AddVolts()
    {
        Bike bike = _system.Bike;
        double scale = bike.SystemVoltage.Volts / 12, charging = bike.ChargingVoltage.Volts;
        double low = ChargingConstants.LowestRegulatedVolts * scale, high = ChargingConstants.HighestRegulatedVolts * scale;
        double full = LeadAcid.OpenCircuitVoltage(Ratio.FromPercent(100), bike.SystemVoltage).Volts;
        if (charging <= full)
            Add(Severity.Fault, Charging, $"Charging volts of {charging.Text("0.00")} V do not exceed the {full.Text("0.00")} V of a full battery: it is never filled.");
        else if (charging < low - 1e-9)
            Add(Severity.Caution, Charging, $"Charging volts of {charging.Text("0.00")} V are below the usual {low.Text("0.00")} V to {high.Text("0.00")} V: the battery charges slowly.");
        else if (charging > high + 1e-9)
            Add(Severity.Caution, Charging, $"Charging volts of {charging.Text("0.00")} V are above the usual {low.Text("0.00")} V to {high.Text("0.00")} V: the battery gasses and lamps die early.");
        if (LeadAcid.StateOfCharge(bike.BatteryVoltage, bike.SystemVoltage) is { DecimalFractions: < 0.9 } share)
            Add(Severity.Note, Battery, $"Battery volts of {bike.BatteryVoltage.Volts.Text("0.00")} V, at rest, are those of {share.Percent.Text("0")} % charge; ride and standing times start from {_system.Options.InitialStateOfCharge.Percent.Text("0")} %.");
    }

    private static string Reason(OutputRange range) => range switch
    {
        OutputRange.BelowCurve => "below the first point of the charging list",
        OutputRange.AboveCurve => "above the last point of the charging list",
        _ => "there is no charging list",
    };

    private void Add(Severity severity, string subject, string message) => _findings.Add(new Finding(severity, subject, message));
}

file static class NumberText
{
    public static string Text(this double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
