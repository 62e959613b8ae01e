using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike solved in every setting that a condition leaves: what all verdicts are drawn from.</summary>
public sealed class BikeSolution
{
    private BikeSolution(
        HarnessNetwork network,
        ElectricPotential supply,
        ImmutableArray<Setting> settings,
        ImmutableArray<OperatingPoint> points,
        ImmutableArray<Finding> notSolved
    )
    {
        Network = network;
        Supply = supply;
        Settings = settings;
        Points = points;
        NotSolved = notSolved;
    }

    /// <summary>The harness.</summary>
    public HarnessNetwork Network { get; }

    /// <summary>Volts of the source before the battery's resistance.</summary>
    public ElectricPotential Supply { get; }

    /// <summary>All settings that the condition leaves.</summary>
    internal ImmutableArray<Setting> Settings { get; }

    /// <summary>The settings that have an operating point, all off first.</summary>
    public ImmutableArray<OperatingPoint> Points { get; }

    /// <summary>A finding for the settings without one of each cause, such as a dead short.</summary>
    public ImmutableArray<Finding> NotSolved { get; }

    /// <summary>Solves a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="when">Only the settings in which this holds.</param>
    /// <param name="supply">Volts of the source before the battery's resistance, zero or more; null takes the bike's
    /// charging volts.</param>
    /// <param name="cancellationToken">Stops the work between two settings.</param>
    /// <exception cref="ArgumentException">The bike has no circuit, or the condition names what it does not have or
    /// leaves too many settings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The volts, or a value of the bike, are outside their
    /// range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static BikeSolution Solve(
        Bike bike,
        Condition when,
        ElectricPotential? supply = null,
        CancellationToken cancellationToken = default
    )
    {
        return Solve(bike, new Wiring(bike, when), supply, cancellationToken);
    }

    /// <summary>The same of a bike whose wiring is known.</summary>
    internal static BikeSolution Solve(
        Bike bike,
        Wiring wiring,
        ElectricPotential? supply,
        CancellationToken cancellationToken
    )
    {
        ElectricPotential volts = supply ?? bike.ChargingVoltage;
        HarnessNetwork network = wiring.NetworkOf(bike);
        HarnessSolver solver = network.CreateSolver();
        solver.SetSupply(volts);
        ImmutableArray<Setting> settings = wiring.Settings;
        var points = ImmutableArray.CreateBuilder<OperatingPoint>(settings.Length);
        var notSolved = new List<NetworkNotSolvedException>();
        SettingGroups groups = wiring.Groups;
        var solved = new SolvedCircuit?[groups.First.Length];
        for (int s = 0; s < settings.Length; s++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            try
            {
                int group = groups.GroupOf[s];
                points.Add(
                    new OperatingPoint(solved[group] ??= solver.Solve(settings[s], groups.MayCarry[group]), settings[s])
                );
            }
            catch (NetworkNotSolvedException problem)
            {
                notSolved.Add(problem);
            }
        }

        return new BikeSolution(
            network,
            volts,
            settings,
            points.DrainToImmutable(),
            [.. notSolved.GroupBy(p => p.IsDeadShort).Select(Found)]
        );
    }

    private static Finding Found(IGrouping<bool, NetworkNotSolvedException> alike)
    {
        NetworkNotSolvedException first = alike.First();
        return new Finding(
            first.IsDeadShort ? FindingKind.DeadShort : FindingKind.NoOperatingPoint,
            Severity.Fault,
            first.IsDeadShort ? Bike.BatteryPlus : "network"
        )
        {
            Setting = first.Setting,
            FurtherSettings = alike.Count() - 1,
            Detail = first.IsDeadShort ? null : first.Message,
        };
    }
}
