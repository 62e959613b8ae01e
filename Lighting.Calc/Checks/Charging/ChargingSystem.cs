using System.Collections.Immutable;
using MathNet.Numerics.Integration;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike's charging system, battery and loads: what goes in, what goes out, and for how long.</summary>
internal sealed class ChargingSystem
{
    /// <summary>A load below which a battery counts as not loaded, 1 mA.</summary>
    private const double NoLoadAmperes = 1e-3;

    private readonly AverageLoad _load;
    private readonly OutputModel _output;
    private readonly HarnessGraph? _graph;

    private ChargingSystem(
        Bike bike,
        ImmutableArray<SwitchDefinition> switches,
        AverageLoad load,
        ChargingOptions options,
        HarnessGraph? graph
    )
    {
        _graph = graph;
        Bike = bike;
        Switches = switches;
        Options = options;
        _load = load;
        _output = OutputModel.Of(bike, options);
    }

    /// <summary>The bike.</summary>
    public Bike Bike { get; }

    /// <summary>The options.</summary>
    public ChargingOptions Options { get; }

    /// <summary>What keeps surplus out of a full battery: of the options, else of the bike.</summary>
    internal RegulatorKind Regulator => Options.RegulatorOf(Bike);

    /// <summary>The bike's switches.</summary>
    internal ImmutableArray<SwitchDefinition> Switches { get; }

    /// <summary>Momentary loads whose duty is not listed, so that it is assumed.</summary>
    internal ImmutableArray<string> AssumedDuties
    {
        get
        {
            if (Bike.Lamps.All(l => l.StatedDuty is not null))
                return [];
            ImmutableArray<bool> assumed = AverageDuty.Assumed(Bike, _graph ?? new HarnessGraph(Bike));
            return [.. Bike.Lamps.Where((_, i) => assumed[i]).Select(l => l.Lamp)];
        }
    }

    /// <summary>The largest listed output in a setting; null where none is known.</summary>
    internal ElectricCurrent? MostOutput(Setting setting) =>
        _output.MostRpm(setting) is { } rpm ? _output.At(rpm, setting).Current : null;

    /// <summary>The curves of the charging list, one for each condition.</summary>
    public ImmutableArray<ChargingCurve> Curves => _output.Curves;

    /// <summary>The fitted machines, one for each curve; empty but with
    /// <see cref="ChargingModel.FittedMachine"/>.</summary>
    public ImmutableArray<PermanentMagnetFit> Machines => _output.Machines;

    /// <summary>The fitted coils, one for each curve; empty but with <see cref="ChargingModel.FittedCoil"/>.</summary>
    public ImmutableArray<AlternatorEquivalentFit> Coils => _output.Coils;

    /// <summary>Describes a bike's charging system with the loads of its harness. For one thread at a time.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">What the lists do not say; null for the defaults.</param>
    public static ChargingSystem Of(Bike bike, ChargingOptions? options = null)
    {
        var network = new HarnessNetwork(bike);
        return WithLoads(
            bike,
            AverageLoads.Of(bike.Lighting == LightingSupply.Direct ? network : network.AtGenerator),
            options,
            network.Graph.Switches.Definitions,
            network.Graph
        );
    }

    /// <summary>Describes a bike's charging system with loads from elsewhere; its switches and graph where they are
    /// known already.</summary>
    public static ChargingSystem WithLoads(
        Bike bike,
        AverageLoad load,
        ChargingOptions? options = null,
        ImmutableArray<SwitchDefinition>? switches = null,
        HarnessGraph? graph = null
    )
    {
        options ??= ChargingOptions.Default;
        options.Check();
        return new ChargingSystem(bike, switches ?? SettingEnumeration.SwitchesOf(bike), load, options, graph);
    }

    /// <summary>What the charging system gives at an engine speed in a setting: the windings whose condition holds,
    /// added up.</summary>
    public ChargingOutput OutputAt(RotationalSpeed speed, Setting setting)
    {
        if (!(speed.RevolutionsPerMinute >= 0))
            throw new ArgumentOutOfRangeException(nameof(speed), speed, "Engine speed must be zero or more.");
        return _output.At(speed.RevolutionsPerMinute, setting);
    }

    /// <summary>The balance of one setting.</summary>
    public ChargingBalance BalanceIn(Setting setting) => new(this, setting, _load(setting, Bike.ChargingVoltage));

    /// <summary>Whether some curve counts in some settings only; where none does, the output is the same in all
    /// settings.</summary>
    internal bool IsConditional => Curves.Any(c => !c.When.Terms.IsEmpty);

    internal BreakEven BreakEvenOf(ChargingBalance balance) =>
        _output.BreakEvenOf(balance.Demand.Amperes, balance.Setting);

    /// <summary>Engine speeds for a table or chart: round steps from zero to the fastest point of the list, which is
    /// always one of them.</summary>
    /// <returns>The speeds; empty without a charging list.</returns>
    public ImmutableArray<RotationalSpeed> Grid(int most = 24)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 2);
        if (Curves.IsEmpty)
            return [];
        double last = Curves.Max(c => c.LastRpm);
        double step = RoundStep(last, most);
        IEnumerable<double> speeds = Enumerable
            .Range(0, (int)Math.Ceiling(last / step - 1e-9))
            .Select(i => i * step)
            .Append(last);
        return [.. speeds.Select(s => RotationalSpeed.FromRevolutionsPerMinute(s))];
    }

    /// <summary>A round step of which at most so many lead from zero to a speed.</summary>
    internal static double RoundStep(double last, int most)
    {
        double decade = Math.Pow(10, Math.Floor(Math.Log10(last / most)));
        return new[] { 1, 2, 2.5, 5, 10 }.Select(m => m * decade).First(s => last / s <= most);
    }

    /// <summary>The balance of the bike's ride; the switches a stretch does not name are off.</summary>
    public RideBalance Ride() => new RideCounter(this).Count(Bike.Ride);

    /// <summary>How long the battery carries a setting with the engine off, from the options' initial state of
    /// charge.</summary>
    public BatteryRunTime Standing(Setting setting, Ratio to)
    {
        double from = Options.InitialStateOfCharge.DecimalFractions,
            target = to.DecimalFractions;
        var result = new BatteryRunTime
        {
            Setting = setting,
            From = Options.InitialStateOfCharge,
            To = to,
            Load = StandingLoad(setting, from),
            Outcome = BatteryRunTimeOutcome.CapacityNotKnown,
            VoltageThere = LeadAcid.OpenCircuitVoltage(to, Bike.SystemVoltage),
        };
        if (from <= target)
            return result with { Outcome = BatteryRunTimeOutcome.AlreadyThere };
        if (result.Load.Amperes < NoLoadAmperes)
            return result with { Outcome = BatteryRunTimeOutcome.NoLoad };
        if (Bike.BatteryCapacity is not { AmpereHours: > 0 } capacity)
            return result;
        double hours = 0;
        double[] ends = [target, .. LeadAcid.TableShares.Where(s => s > target && s < from), from];
        for (int i = 1; i < ends.Length; i++)
            hours += GaussLegendreRule.Integrate(HoursFromFull, ends[i - 1], ends[i], 2);
        return double.IsFinite(hours)
            ? result with
            {
                Outcome = BatteryRunTimeOutcome.Reached,
                Time = Duration.FromHours(hours),
            }
            : result with
            {
                Outcome = BatteryRunTimeOutcome.NoLoad,
            };

        double HoursFromFull(double share)
        {
            double amperes = StandingLoad(setting, share).Amperes;
            if (amperes < NoLoadAmperes)
                return double.PositiveInfinity;
            return amperes * Options.RatedTime.Hours <= capacity.AmpereHours
                ? capacity.AmpereHours / amperes
                : PeukertLaw
                    .DischargeTime(
                        capacity,
                        Options.RatedTime,
                        Options.PeukertExponent,
                        ElectricCurrent.FromAmperes(amperes)
                    )
                    .Hours;
        }
    }

    /// <summary>Everything at once: balances of all settings, the worst, the ride's, the surplus, standing times and
    /// what is found.</summary>
    /// <param name="only">The settings to look at; <see cref="Condition.Always"/> for all.</param>
    /// <param name="standing">Settings to stand in with the engine off, besides the usual one of the ride and the
    /// worst; null for those alone.</param>
    public ChargingReport Report(Condition only, IReadOnlyList<Setting>? standing = null) =>
        ChargingReporter.Report(this, SettingEnumeration.Of(Bike, only), standing ?? []);

    /// <summary>The same of settings that are enumerated already.</summary>
    internal ChargingReport Report(IReadOnlyList<Setting> settings) => ChargingReporter.Report(this, settings, []);

    internal ElectricCurrent RunningDemand(Setting setting) =>
        _load(setting, Bike.ChargingVoltage) + Options.FieldCurrent;

    internal ElectricCurrent StandingLoad(Setting setting, double stateOfCharge) =>
        _load(setting, LeadAcid.OpenCircuitVoltage(Ratio.FromDecimalFractions(stateOfCharge), Bike.SystemVoltage));

    internal BalancePoint PointAt(ChargingBalance balance, RotationalSpeed speed)
    {
        ChargingOutput output = OutputAt(speed, balance.Setting);
        // With the engine standing the field is off and only the loads are left.
        ElectricCurrent? net = output.Current - (output.Range == OutputRange.Standing ? balance.Load : balance.Demand);
        double? surplus = net is { } n ? Math.Max(0, n.Amperes) : null;
        double? shunted =
            Regulator == RegulatorKind.Shunt
                ? Math.Min(surplus ?? 0, Options.ShuntLimit?.Amperes ?? double.PositiveInfinity)
                : null;
        double? intoFull = Regulator switch
        {
            _ when surplus is null or 0 => surplus,
            RegulatorKind.None => surplus,
            RegulatorKind.Series => 0,
            RegulatorKind.Shunt => surplus - shunted,
            _ => null,
        };
        return new BalancePoint
        {
            Speed = speed,
            Output = output.Current,
            Net = net,
            OverchargeCurrent = intoFull is { } amperes ? ElectricCurrent.FromAmperes(amperes) : null,
            RectifierHeat = output.Current is { } current
                ? Power.FromWatts(current.Amperes * Options.BridgeDrop.Volts)
                : null,
            ShuntHeat =
                surplus is not null && shunted is { } shunt
                    ? Power.FromWatts(shunt * (Bike.ZenerVoltage ?? Bike.ChargingVoltage).Volts)
                    : null,
        };
    }
}
