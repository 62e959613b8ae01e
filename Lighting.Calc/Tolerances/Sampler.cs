using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Solves one sampled bike after another in every electrical state. For one thread.</summary>
/// <remarks>Every state is solved from the supply voltage, so that a bike's results are its own and not a matter of
/// what was solved before.</remarks>
internal sealed class Sampler(SamplingPlan plan)
{
    private const int ReportedEach = 100;

    private readonly HarnessSolver _solver = plan.Network.CreateSolver();

    private readonly bool _hasDrivers = plan.Network.Bike.Lamps.Any(l => l.Specification.Type == LampType.Led);

    // Of a bike whose generator joins the harness apart from the battery: the battery alone.
    private readonly HarnessSolver? _battery = plan.Network.IsApart ? plan.Network.AtBattery.CreateSolver() : null;

    /// <summary>Draws and solves all bikes on several threads.</summary>
    /// <remarks>A bike depends on seed and number alone; threads only decide who solves it.</remarks>
    public static SampledBike[] Draw(SamplingPlan plan, IProgress<Ratio>? progress, CancellationToken cancellationToken)
    {
        ToleranceOptions options = plan.Options;
        var drawn = new SampledBike[options.Samples];
        int done = 0;
        try
        {
            var threads = new ParallelOptions
            {
                MaxDegreeOfParallelism = options.Threads ?? -1,
                CancellationToken = cancellationToken,
            };
            Parallel.For(
                0,
                drawn.Length,
                threads,
                () => new Sampler(plan),
                (sample, _, sampler) =>
                {
                    drawn[sample] = sampler.Solve(Values(plan, sample));
                    int solved = Interlocked.Increment(ref done);
                    if (solved % ReportedEach == 0 || solved == drawn.Length)
                        progress?.Report(Ratio.FromDecimalFractions((double)solved / drawn.Length));
                    return sampler;
                },
                _ => { }
            );
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        return drawn;
    }

    /// <summary>The values of a sample's parts.</summary>
    public static double[] Values(SamplingPlan plan, int sample)
    {
        var stream = new SampleStream(plan.Options.Seed, sample);
        return [.. plan.Uncertain.Parts.Select((part, place) => part.Spread.Table.At(stream.Uniform(place)))];
    }

    /// <summary>Solves the bike that a set of values makes.</summary>
    /// <exception cref="NetworkNotSolvedException">A state has no operating point with these values.</exception>
    public SampledBike Solve(double[] values)
    {
        Bike bike = plan.Uncertain.With(values);
        Fit(bike, _solver);
        if (_battery is { } battery)
            Fit(bike, battery);
        RunningEngine? engine = plan.Uncertain.IsBalanced
            ? new RunningEngine(bike, _solver, plan.Options.Check.Charging)
            : null;
        bool isOff = plan.Uncertain.Engine == EngineState.Off;
        ElectricPotential supply = engine?.RegulatedVoltage ?? plan.Options.Check.Supply ?? bike.BatteryVoltage;
        double[] least = new double[bike.Lamps.Length],
            lasting = new double[bike.Lamps.Length],
            drops = new double[bike.Lamps.Length],
            dropVolts = new double[bike.Lamps.Length],
            most = new double[bike.Lamps.Length],
            fuses = new double[bike.Fuses.Length],
            continuous = new double[bike.Fuses.Length];
        Array.Fill(least, double.PositiveInfinity);
        Array.Fill(lasting, double.PositiveInfinity);
        Array.Fill(drops, double.NegativeInfinity);
        foreach ((Setting setting, ImmutableArray<(int, bool)> lamps, bool isContinuous) in plan.States)
        {
            SolvedCircuit solved = engine?.AtMostOutput(setting).Solved
                ?? Solve(setting, supply, isOff ? bike.BatteryResistance : ElectricResistance.Zero).Solved;
            foreach ((int lamp, bool judgesDrop) in lamps)
            {
                least[lamp] = Math.Min(least[lamp], solved.LampVolts(lamp));
                if (!judgesDrop)
                    continue;
                lasting[lamp] = Math.Min(lasting[lamp], solved.LampVolts(lamp));
                double drop = 1 - solved.LampVolts(lamp) / solved.SupplyVolts;
                if (drop > drops[lamp])
                    (drops[lamp], dropVolts[lamp]) = (drop, solved.SupplyVolts);
            }

            for (int lamp = 0; lamp < most.Length; lamp++)
                most[lamp] = Math.Max(most[lamp], solved.LampVolts(lamp));
            Load(solved, isContinuous);
            if (_hasDrivers && engine?.AtSlowest(setting) is { } slow)
                Load(slow.Solved, isContinuous);
            if (_battery is not null)
                Load(Solve(setting, bike.BatteryVoltage, bike.BatteryResistance, isOff: true).Solved, isContinuous);
        }

        (double rpm, double charge) = bike.Charging.IsEmpty
            ? (double.NaN, double.NaN)
            : Balance(bike, plan.Uncertain.BatteryFactor(values));
        return new SampledBike(values, least, lasting, drops, dropVolts, most, fuses, continuous, rpm, charge);

        void Load(SolvedCircuit solved, bool isContinuous)
        {
            for (int fuse = 0; fuse < fuses.Length; fuse++)
            {
                fuses[fuse] = Math.Max(fuses[fuse], solved.FuseAmperes(fuse));
                if (isContinuous)
                    continuous[fuse] = Math.Max(
                        continuous[fuse],
                        plan.Momentary.ContinuousAmperes(solved, fuse, plan.Fed[fuse])
                    );
            }
        }
    }

    private OperatingPoint Solve(
        Setting setting,
        ElectricPotential supply,
        ElectricResistance source,
        bool isOff = false
    )
    {
        HarnessSolver solver = isOff && _battery is { } battery ? battery : _solver;
        solver.SetBatteryResistance(source);
        solver.SetSupply(supply);
        return solver.Solve(setting);
    }

    private static void Fit(Bike bike, HarnessSolver solver)
    {
        solver.WarmWires(WireHeat.Of(bike));
        for (int i = 0; i < bike.Runs.Length; i++)
            solver.SetRun(i, bike.Runs[i].WireResistance(bike.WireTemperature), bike.Runs[i].TotalJointResistance);
        for (int i = 0; i < bike.Switches.Length; i++)
            solver.SetContact(i, bike.Switches[i].Resistance);
        for (int i = 0; i < bike.Fuses.Length && bike.HasNetwork; i++)
            solver.SetFuse(i, FuseTable.ResistanceOf(bike.Fuses[i]));
        for (int i = 0; i < bike.Lamps.Length; i++)
            solver.SetLamp(i, bike.Lamps[i].Specification);
    }

    private (double Rpm, double AmpereHours) Balance(Bike bike, double batteryFactor)
    {
        // Any voltage but the charging voltage is that of the battery with the engine off.
        ChargingSystem system = ChargingSystem.WithLoads(
            bike,
            (setting, voltage) =>
                AverageLoads.Of(
                    voltage.Volts == bike.ChargingVoltage.Volts
                        ? Solve(setting, voltage, ElectricResistance.Zero)
                        : Solve(setting, voltage * batteryFactor, bike.BatteryResistance, isOff: true)
                ),
            plan.Options.Check.Charging,
            plan.Switches
        );
        double worst = plan.Windings.IsEmpty ? double.NaN : 0;
        foreach (ImmutableArray<Setting> settings in plan.Windings)
            worst = Math.Max(worst, Rpm(settings.Select(system.BalanceIn).MaxBy(b => b.Load.Amperes)!.BreakEven));
        return (worst, bike.Ride.IsEmpty ? double.NaN : system.Ride().NetCharge?.AmpereHours ?? double.NaN);
    }

    private static double Rpm(BreakEven found) =>
        found.Outcome switch
        {
            BreakEvenOutcome.Always => 0,
            BreakEvenOutcome.Never => double.PositiveInfinity,
            _ => found.Speed?.RevolutionsPerMinute ?? double.NaN,
        };
}
