using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike solved in every setting that a condition leaves: what all verdicts are drawn from.</summary>
internal sealed class BikeSolution
{
    private BikeSolution(
        HarnessNetwork network,
        ElectricPotential supply,
        ImmutableArray<Setting> settings,
        ImmutableArray<OperatingPoint> points,
        ImmutableArray<SolvedCircuit> held,
        ImmutableArray<Finding> notSolved
    )
    {
        Held = held;
        Network = network;
        Supply = supply;
        Settings = settings;
        Points = points;
        NotSolved = notSolved;
    }

    /// <summary>The harness.</summary>
    public HarnessNetwork Network { get; }

    /// <summary>Voltage of the source: held at the battery's terminals with the engine running, as far as the output
    /// reaches; before the battery's resistance with the engine off.</summary>
    public ElectricPotential Supply { get; }

    /// <summary>The harness at that voltage, for each of <see cref="Points"/>.</summary>
    internal ImmutableArray<SolvedCircuit> Held { get; }

    /// <summary>All settings that the condition leaves.</summary>
    internal ImmutableArray<Setting> Settings { get; }

    /// <summary>The settings that have an operating point, all off first.</summary>
    public ImmutableArray<OperatingPoint> Points { get; }

    // Those with the engine off, where the generator joins the harness apart from the battery.
    private ImmutableArray<OperatingPoint> EngineOff { get; init; } = [];

    // Those at the slowest listed speed in which LED drivers are lit: at a lower voltage they draw more.
    private ImmutableArray<OperatingPoint> Slow { get; init; } = [];

    /// <summary>The points by which fuses are judged: <see cref="Points"/>, and those in which more may flow: with the
    /// engine off through the wires from the battery to where the generator joins, and at the slowest speed through LED
    /// drivers.</summary>
    internal ImmutableArray<OperatingPoint> FusePoints =>
        EngineOff.IsEmpty && Slow.IsEmpty ? Points : [.. Points, .. Slow, .. EngineOff];

    /// <summary>A caution for the settings with no steady voltage at the slowest speed, by which no fuse is
    /// judged.</summary>
    internal ImmutableArray<Finding> NotSteady { get; private init; } = [];

    /// <summary>A finding for the settings without one of each cause, such as a dead short.</summary>
    public ImmutableArray<Finding> NotSolved { get; }

    /// <summary>Solves a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">Its settings, whether the engine runs, the voltage of the source and how charging is
    /// judged.</param>
    /// <param name="cancellationToken">Stops the work between two settings.</param>
    public static BikeSolution Solve(Bike bike, CheckOptions options, CancellationToken cancellationToken = default) =>
        Solve(bike, new Wiring(bike, options.When), options, cancellationToken);

    /// <summary>The same of a bike whose wiring is known.</summary>
    internal static BikeSolution Solve(
        Bike bike,
        Wiring wiring,
        CheckOptions options,
        CancellationToken cancellationToken
    )
    {
        bool isFedAtGenerator = options.IsFedByGenerator(bike);
        HarnessNetwork network = isFedAtGenerator ? wiring.NetworkOf(bike).AtGenerator : wiring.NetworkOf(bike);
        HarnessSolver solver = network.CreateSolver();
        bool isOff = options.Engine == EngineState.Off;
        // A lighting coil feeds the lamps without a battery; what it holds is found for each speed by itself.
        RunningEngine? engine = isFedAtGenerator ? new RunningEngine(bike, solver, options.Charging) : null;
        ElectricPotential volts = options.Supply
            ?? (isOff ? bike.BatteryVoltage : engine?.RegulatedVoltage ?? bike.ChargingVoltage);
        if (!isOff)
            solver.SetBatteryResistance(ElectricResistance.Zero);
        ImmutableArray<Setting> settings = wiring.Settings;
        var points = ImmutableArray.CreateBuilder<OperatingPoint>(settings.Length);
        var heldAt = ImmutableArray.CreateBuilder<SolvedCircuit>(settings.Length);
        var notSolved = new List<NetworkNotSolvedException>();
        SettingGroups groups = wiring.Groups;
        int[] drivers =
        [
            .. Enumerable
                .Range(0, bike.Lamps.Length)
                .Where(l => bike.Lamps[l].Specification.Type == LampType.Led),
        ];
        var held = new SolvedCircuit?[groups.First.Length];
        var balanced = new Dictionary<(SolvedCircuit Held, GeneratorOutput? Output), OperatingPoint>();
        Func<Setting, bool> mayRun = EngineRunning.Of(bike);
        HarnessSolver? standing = null;
        var stands = new SolvedCircuit?[groups.First.Length];
        for (int s = 0; s < settings.Length; s++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            Setting setting = settings[s];
            int group = groups.GroupOf[s];
            try
            {
                solver.SetSupply(volts);
                SolvedCircuit solved = held[group] ??= solver.Solve(setting, groups.MayCarry[group]);
                points.Add(
                    engine is null ? new OperatingPoint(solved, setting)
                    : mayRun(setting) ? Balanced(setting, groups.MayCarry[group], solved)
                    : Standing(setting, group)
                );
                heldAt.Add(solved);
            }
            catch (NetworkNotSolvedException problem)
            {
                notSolved.Add(problem);
            }
        }

        var notSteady = new List<NetworkNotSolvedException>();
        ImmutableArray<OperatingPoint> slowest =
            engine is not null && !bike.Charging.IsEmpty && drivers.Length > 0 ? [.. Slow()] : [];
        return new BikeSolution(
            network,
            volts,
            settings,
            points.DrainToImmutable(),
            heldAt.DrainToImmutable(),
            [.. notSolved.GroupBy(p => p.IsDeadShort).Select(p => Found(p, Severity.Fault))]
        )
        {
            EngineOff = network.IsApart ? [.. Off()] : [],
            Slow = slowest,
            NotSteady = [.. notSteady.GroupBy(p => p.IsDeadShort).Select(p => Found(p, Severity.Caution))],
        };

        // Of each set of currents in which a driver is lit.
        IEnumerable<OperatingPoint> Slow()
        {
            var slow = new Dictionary<(SolvedCircuit Held, GeneratorOutput Output), OperatingPoint?>();
            for (int s = 0; s < settings.Length; s++)
            {
                cancellationToken.ThrowIfCancellationRequested();
                Setting setting = settings[s];
                int group = groups.GroupOf[s];
                if (
                    held[group] is not { } solved
                    || !Array.Exists(drivers, d => solved.LampAmperes(d) != 0)
                    || engine!.SlowestOutput(setting) is not { } output
                )
                    continue;
                if (!slow.TryGetValue((solved, output), out OperatingPoint? point))
                    slow[(solved, output)] = point = Steady(setting, groups.MayCarry[group], output, solved);
                if (point is not null)
                    yield return point.Setting.Equals(setting)
                        ? point
                        : new OperatingPoint(point.Solved, setting, point.Bus);
            }
        }

        OperatingPoint? Steady(Setting setting, ContactSet carrying, GeneratorOutput output, SolvedCircuit solved)
        {
            try
            {
                return engine!.Solve(setting, carrying, output, solved);
            }
            catch (NetworkNotSolvedException problem)
            {
                notSteady.Add(problem);
                return null;
            }
        }

        // The engine stands, as without ignition, and the battery feeds all.
        OperatingPoint Standing(Setting setting, int group)
        {
            if (standing is null)
            {
                standing = network.AtBattery.CreateSolver();
                standing.SetSupply(bike.BatteryVoltage);
            }

            return new OperatingPoint(stands[group] ??= standing.Solve(setting, groups.MayCarry[group]), setting);
        }

        IEnumerable<OperatingPoint> Off()
        {
            for (int s = 0; s < settings.Length; s++)
            {
                OperatingPoint? point = null;
                try
                {
                    point = Standing(settings[s], groups.GroupOf[s]);
                }
                catch (NetworkNotSolvedException)
                {
                    // Found with the engine running as well, or of no bearing on a verdict that those settings decide.
                }

                if (point is not null)
                    yield return point;
            }
        }

        // Settings of the same currents and the same output share their operating point.
        OperatingPoint Balanced(Setting setting, ContactSet carrying, SolvedCircuit solved)
        {
            (SolvedCircuit, GeneratorOutput?) key = (solved, engine!.MostOutput(setting));
            if (!balanced.TryGetValue(key, out OperatingPoint? point))
                balanced[key] = point = engine.AtMostOutput(setting, carrying, solved);
            return point.Setting.Equals(setting) ? point : new OperatingPoint(point.Solved, setting, point.Bus);
        }
    }

    private static Finding Found(IGrouping<bool, NetworkNotSolvedException> alike, Severity severity)
    {
        NetworkNotSolvedException first = alike.First();
        return new Finding(
            first.IsDeadShort ? FindingKind.DeadShort : FindingKind.NoOperatingPoint,
            severity,
            first.IsDeadShort ? Bike.BatteryPlus : "network"
        )
        {
            Setting = first.Setting,
            FurtherSettings = alike.Count() - 1,
            Detail = first.IsDeadShort ? null : first.Message,
        };
    }
}
