using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Where the voltage is lost: the breakdown of each lamp, and what repairing the largest of them would give
/// back.</summary>
public static class VoltageDropAnalysis
{
    /// <summary>The voltage-drop breakdown of one lamp at an operating point, or null when the lamp is not
    /// fed.</summary>
    /// <param name="bike">The bike that was solved.</param>
    /// <param name="point">Its operating point.</param>
    /// <param name="lamp">Index in the bike's lamps.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such lamp.</exception>
    internal static VoltageDropBreakdown? Breakdown(Bike bike, OperatingPoint point, int lamp)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lamp);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lamp, point.Lamps.Length);
        LampState state = point.Lamps[lamp];
        if (state.Drop is null)
            return null;
        var entries = ImmutableArray.CreateBuilder<VoltageDropItem>();
        if (point.BatteryDrop.Volts != 0)
            entries.Add(
                Entry(
                    VoltageDropKind.Battery,
                    "battery",
                    point.Solved.BatteryDropVolts,
                    Math.Abs(point.Solved.SourceAmperes),
                    point,
                    null
                )
            );
        if (bike.HasNetwork)
        {
            HarnessPart part = point.Solved.Graph.Lamps[lamp];
            int live = point.Solved.SourcePoint,
                earth = point.Solved.Graph.Earth;
            Reached feed = Widest(point, live),
                back = Widest(point, part.B);
            if (!feed.Reaches(part.A) || !back.Reaches(earth))
                return null;
            AddSteps(
                entries,
                live,
                feed.PathTo(part.A),
                bike,
                point,
                VoltageDropKind.FeedWire,
                VoltageDropKind.FeedJoint
            );
            AddSteps(
                entries,
                part.B,
                back.PathTo(earth),
                bike,
                point,
                VoltageDropKind.ReturnWire,
                VoltageDropKind.ReturnJoint
            );
        }

        return new VoltageDropBreakdown
        {
            Setting = point.Setting,
            Lamp = state,
            SupplyVoltage = point.SupplyVoltage,
            BatteryDrop = point.Bus?.BatteryDrop ?? ElectricPotential.Zero,
            Solved = point.Solved,
            Entries = entries.ToImmutable(),
        };
    }

    /// <summary>Every lamp's breakdown in the setting where it loses most of its voltage; lamps that are never fed are
    /// left out. Settings with a momentary switch worked (horn, brake, indicators) count only for lamps that need
    /// it.</summary>
    /// <param name="bike">The bike that was solved.</param>
    /// <param name="settings">Its operating points; all settings, if the answer shall hold for all.</param>
    /// <returns>One for each such lamp, in the order of the list. Settings in which a lamp is meant to be lit go before
    /// others.</returns>
    internal static ImmutableArray<VoltageDropBreakdown> WorstBreakdowns(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings
    ) => WorstBreakdowns(bike, IntendedOnStates.WorstOfEach(bike, settings, MomentarySwitches.UsualWords));

    /// <summary>The same of the settings in which each lamp is known to lose most.</summary>
    internal static ImmutableArray<VoltageDropBreakdown> WorstBreakdowns(
        Bike bike,
        ImmutableArray<OperatingPoint?> worst
    )
    {
        var breakdowns = ImmutableArray.CreateBuilder<VoltageDropBreakdown>();
        for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
            if (worst[lamp] is { } point && Breakdown(bike, point, lamp) is { } breakdown)
                breakdowns.Add(breakdown);

        return breakdowns.ToImmutable();
    }

    /// <summary>The parts of a breakdown that cost most, each with what the lamp would gain if the part lost
    /// nothing.</summary>
    /// <param name="network">The harness.</param>
    /// <param name="breakdown">A breakdown of one of its lamps.</param>
    /// <param name="count">How many parts at most, 1 or more. The battery is never among them.</param>
    /// <returns>The parts, costliest first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 1.</exception>
    /// <exception cref="InvalidOperationException">The breakdown is of another bike: its lamp or a part of it is not in
    /// this one.</exception>
    /// <exception cref="NetworkNotSolvedException">The corrected harness has no operating point.</exception>
    public static ImmutableArray<RepairBenefit> LargestDrops(
        HarnessNetwork network,
        VoltageDropBreakdown breakdown,
        int count = 3
    ) => LargestDropsOfEach(network, [breakdown], count)[0];

    /// <summary>The same for many lamps: a part that several of them share is solved once.</summary>
    /// <param name="network">The harness.</param>
    /// <param name="breakdowns">Breakdowns of its lamps, in any settings.</param>
    /// <param name="count">How many parts of each at most, 1 or more. The battery is never among them.</param>
    /// <returns>For each breakdown its parts, costliest first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 1.</exception>
    /// <exception cref="InvalidOperationException">A breakdown is of another bike: its lamp or a part of it is not in
    /// this one.</exception>
    /// <exception cref="NetworkNotSolvedException">A corrected harness has no operating point.</exception>
    public static ImmutableArray<ImmutableArray<RepairBenefit>> LargestDropsOfEach(
        HarnessNetwork network,
        IReadOnlyList<VoltageDropBreakdown> breakdowns,
        int count = 3
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return new Repairs(network).Of(breakdowns, count);
    }

    // The widest way by current: of two parallel grounds the one that carries more.
    private static Reached Widest(OperatingPoint point, int start)
    {
        ContactSet closed = point.Closed;
        return point.Solved.Graph.From(
            start,
            p => p.Joins(closed) ? 1 / (1e-12 + AmperesOf(p, point)) : HarnessGraph.NoWay,
            widest: true
        );
    }

    private static double AmperesOf(HarnessPart part, OperatingPoint point) =>
        part.Kind switch
        {
            HarnessPartKind.Run => point.Solved.RunAmperes(part.Index),
            HarnessPartKind.Contact => Math.Abs(point.Solved.ContactAmperes(part.Index)),
            _ => point.Solved.FuseAmperes(part.Index),
        };

    // Of the sign of the current.
    private static (double Volts, double JointVolts) LostIn(HarnessPart part, OperatingPoint point) =>
        part.Kind switch
        {
            HarnessPartKind.Run => point.Solved.RunDropVolts(part.Index),
            HarnessPartKind.Contact => (point.Solved.ContactDropVolts(part.Index), 0),
            _ => (point.Solved.FuseDropVolts(part.Index), 0),
        };

    private static void AddSteps(
        ImmutableArray<VoltageDropItem>.Builder entries,
        int start,
        ImmutableArray<HarnessPart> way,
        Bike bike,
        OperatingPoint point,
        VoltageDropKind wire,
        VoltageDropKind joint
    )
    {
        int at = start;
        foreach (HarnessPart part in way)
        {
            (double volts, double jointVolts) = LostIn(part, point);
            double amperes = AmperesOf(part, point);
            // Currents flow from the live terminal on a negative-earth bike and towards it on a positive-earth one.
            double sign = bike.EarthSign * (part.A == at ? 1 : -1);
            at = part.Other(at);
            VoltageDropKind kind = part.Kind switch
            {
                HarnessPartKind.Contact => VoltageDropKind.Switch,
                HarnessPartKind.Fuse => VoltageDropKind.Fuse,
                _ => wire,
            };
            entries.Add(
                Entry(
                    kind,
                    part.Name,
                    sign * volts,
                    amperes,
                    point,
                    kind == VoltageDropKind.Switch ? PartDropLimits.Switch : null
                )
            );
            if (jointVolts != 0)
                entries.Add(
                    Entry(
                        joint,
                        part.Name,
                        sign * jointVolts,
                        amperes,
                        point,
                        PartDropLimits.Joint * bike.Runs[part.Index].Joints
                    )
                );
        }
    }

    private static VoltageDropItem Entry(
        VoltageDropKind kind,
        string part,
        double volts,
        double amperes,
        OperatingPoint point,
        ElectricPotential? limit
    ) =>
        new(kind, part)
        {
            Voltage = ElectricPotential.FromVolts(volts),
            Share = Ratio.FromDecimalFractions(volts / point.Solved.SupplyVolts),
            Current = ElectricCurrent.FromAmperes(amperes),
            Limit = limit,
        };
}
