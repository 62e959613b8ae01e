using UnitsNet;

namespace Lighting.Calc;

/// <summary>Relays that cannot pull in or stay in, or that chatter.</summary>
internal static class RelayReview
{
    /// <param name="bike">A bike with runs.</param>
    /// <param name="points">Its operating points.</param>
    /// <param name="network">Its harness.</param>
    /// <param name="isRunning">Whether the engine runs, so that the battery's resistance is no part of the
    /// source.</param>
    public static IEnumerable<Finding> Of(
        Bike bike,
        IReadOnlyList<OperatingPoint> points,
        HarnessNetwork network,
        bool isRunning
    )
    {
        if (network.Graph.Switches.Relays is not { } relays)
            yield break;
        HarnessSolver solver = network.CreateSolver();
        if (isRunning)
            solver.SetBatteryResistance(ElectricResistance.Zero);
        for (int r = 0; r < relays.Coils.Length; r++)
            foreach (Finding finding in OfRelay(bike, points, network, solver, r).DistinctBy(f => f.Kind))
                yield return finding;
    }

    private static IEnumerable<Finding> OfRelay(
        Bike bike,
        IReadOnlyList<OperatingPoint> points,
        HarnessNetwork network,
        HarnessSolver solver,
        int relay
    )
    {
        Switches switches = network.Graph.Switches;
        int lamp = switches.Relays!.Coils[relay];
        string name = bike.Lamps[lamp].Lamp;
        RelayCoil coil = bike.Lamps[lamp].Coil!;
        bool isEverIn = false;
        foreach (OperatingPoint point in points.DistinctBy(p => (p.Solved, switches.RelaysIn(p.Setting))))
        {
            RelayStates.Settled settled = switches.RelaysIn(point.Setting)!;
            double volts = Math.Abs(point.Solved.LampVolts(lamp));
            if (settled.Chatters[relay])
            {
                yield return Found(
                    FindingKind.RelayChatters,
                    Severity.Fault,
                    point,
                    volts,
                    coil.PullInVoltage,
                    "its own contact opens its coil"
                );
                isEverIn = true;
            }
            else if (settled.IsIn[relay])
            {
                isEverIn = true;
                solver.SetSupply(point.SupplyVoltage);
                if (solver.AtRestVolts(point.Setting, relay) is { } atRest && atRest < coil.PullInVoltage.Volts - 1e-9)
                    yield return Found(
                        FindingKind.RelayDoesNotPullIn,
                        Severity.Fault,
                        point,
                        atRest,
                        coil.PullInVoltage,
                        null
                    );
                else if (volts < coil.DropOutVoltage.Volts - 1e-9)
                    yield return Found(
                        FindingKind.RelayChatters,
                        Severity.Fault,
                        point,
                        volts,
                        coil.DropOutVoltage,
                        "with its load on its coil loses its voltage"
                    );
            }
            else if (volts >= coil.PullInVoltage.Volts)
                yield return Found(
                    FindingKind.RelayFedThroughLoad,
                    Severity.Caution,
                    point,
                    volts,
                    coil.PullInVoltage,
                    null
                );
        }

        if (!isEverIn)
            yield return new Finding(FindingKind.RelayNeverIn, Severity.Caution, name);

        Finding Found(
            FindingKind kind,
            Severity severity,
            OperatingPoint point,
            double volts,
            ElectricPotential limit,
            string? detail
        ) =>
            new(kind, severity, name)
            {
                Value = ElectricPotential.FromVolts(volts),
                Limit = limit,
                Setting = point.Setting,
                Detail = detail,
            };
    }
}
