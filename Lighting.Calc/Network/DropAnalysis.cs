using System.Collections.Immutable;
using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.Network;

/// <summary>Where the volts are lost: the ledger of each lamp, and what mending the costliest parts would give back.</summary>
public static class DropAnalysis
{
    /// <summary>The ledger of one lamp at an operating point, or null when the lamp is not fed.</summary>
    /// <param name="bike">The bike that was solved.</param>
    /// <param name="point">Its operating point.</param>
    /// <param name="lamp">Index in the bike's lamps.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such lamp.</exception>
    public static DropLedger? LedgerOf(Bike bike, OperatingPoint point, int lamp)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lamp);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lamp, point.Lamps.Length);
        return LedgerOf(bike, new HarnessPath(HarnessLink.Of(bike)), point, lamp);
    }

    private static DropLedger? LedgerOf(Bike bike, HarnessPath paths, OperatingPoint point, int lamp)
    {
        LampState state = point.Lamps[lamp];
        if (state.Drop is null)
            return null;
        var entries = ImmutableArray.CreateBuilder<DropEntry>();
        if (point.BatteryDrop.Volts != 0)
            entries.Add(Entry(DropKind.Battery, "battery", point.Solved.BatteryDropVolts, Math.Abs(point.Solved.SourceAmperes), point));
        if (bike.HasNetwork)
        {
            IReadOnlyList<HarnessStep>? feed = Way(paths, point, bike.LivePoint, state.Lamp.Feed!);
            IReadOnlyList<HarnessStep>? back = Way(paths, point, state.Lamp.Return!, bike.EarthPoint);
            if (feed is null || back is null)
                return null;
            AddSteps(entries, feed, bike, point, DropKind.FeedWire, DropKind.FeedJoint);
            AddSteps(entries, back, bike, point, DropKind.ReturnWire, DropKind.ReturnJoint);
        }

        return new DropLedger { Setting = point.Setting, Lamp = state, SupplyVoltage = point.SupplyVoltage, Entries = entries.ToImmutable() };
    }

    /// <summary>Every lamp's ledger in the setting where it loses most of its volts; lamps that are never fed are left out.</summary>
    /// <param name="bike">The bike that was solved.</param>
    /// <param name="settings">Its operating points; all settings, if the answer shall hold for all.</param>
    /// <returns>One for each such lamp, in the order of the list. Settings in which a lamp is meant to be lit go before others.</returns>
    public static ImmutableArray<DropLedger> WorstOf(Bike bike, IReadOnlyList<OperatingPoint> settings) => WorstOf(bike, MeantLit.WorstOfEach(bike, settings));

    /// <summary>The same of the settings in which each lamp is known to lose most.</summary>
    internal static ImmutableArray<DropLedger> WorstOf(Bike bike, ImmutableArray<OperatingPoint?> worst)
    {
        var ledgers = ImmutableArray.CreateBuilder<DropLedger>();
        var paths = new HarnessPath(HarnessLink.Of(bike));
        for (int lamp = 0; lamp < bike.Lamps.Length; lamp++)
            if (worst[lamp] is { } point && LedgerOf(bike, paths, point, lamp) is { } ledger)
                ledgers.Add(ledger);

        return ledgers.ToImmutable();
    }

    /// <summary>The parts of a ledger that cost most, each with what the lamp would gain if the part lost nothing.</summary>
    /// <param name="network">The harness.</param>
    /// <param name="ledger">A ledger of one of its lamps.</param>
    /// <param name="count">How many parts at most, 1 or more. The battery is never among them.</param>
    /// <returns>The parts, costliest first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 1.</exception>
    /// <exception cref="InvalidOperationException">The ledger is of another bike: its lamp or a part of it is not in this one.</exception>
    /// <exception cref="NetworkNotSolvedException">The mended harness has no operating point.</exception>
    public static ImmutableArray<MendingGain> CostliestOf(HarnessNetwork network, DropLedger ledger, int count = 3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        Bike bike = network.Bike;
        int lamp = Enumerable.Range(0, bike.Lamps.Length).First(i => Name.Equal(bike.Lamps[i].Lamp, ledger.Lamp.Lamp.Lamp));
        return
        [
            .. ledger.Entries
                .Where(e => e.Kind != DropKind.Battery && e.Voltage.Volts > 0)
                .OrderByDescending(e => e.Voltage.Volts)
                .Take(count)
                .Select(entry => Gain(network, ledger, lamp, entry)),
        ];
    }

    private static MendingGain Gain(HarnessNetwork network, DropLedger ledger, int lamp, DropEntry entry)
    {
        Bike bike = network.Bike;
        HarnessSolver solver = network.CreateSolver();
        solver.SetSupply(ledger.SupplyVoltage);
        switch (entry.Kind)
        {
            case DropKind.Fuse:
                solver.SetFuse(IndexOf(bike.Fuses, f => f.Name, entry.Part), ElectricResistance.Zero);
                break;
            case DropKind.Switch:
                solver.SetContact(IndexOf(bike.Switches, s => s.Name, entry.Part), ElectricResistance.Zero);
                break;
            default:
                int index = IndexOf(bike.Runs, r => r.Name, entry.Part);
                Run run = bike.Runs[index];
                bool joints = entry.Kind is DropKind.FeedJoint or DropKind.ReturnJoint;
                solver.SetRun(index, joints ? run.WireResistance(bike.WireTemperature) : ElectricResistance.Zero, joints ? ElectricResistance.Zero : run.TotalJointResistance);
                break;
        }

        LampState mended = solver.Solve(ledger.Setting).Lamps[lamp];
        return new MendingGain(entry, mended.Voltage - ledger.Lamp.Voltage, mended.RelativeLight - ledger.Lamp.RelativeLight);
    }

    private static int IndexOf<T>(ImmutableArray<T> items, Func<T, string> name, string wanted) =>
        Enumerable.Range(0, items.Length).First(i => Name.Equal(name(items[i]), wanted));

    // The widest way by current: of two parallel grounds the one that carries more.
    private static IReadOnlyList<HarnessStep>? Way(HarnessPath paths, OperatingPoint point, string from, string to) =>
        paths.Cheapest(from, to, link => link.Kind == HarnessLinkKind.Contact && !point.IsClosed(link.Index) ? null : 1 / (1e-12 + AmperesOf(link, point)), widest: true);

    private static double AmperesOf(HarnessLink link, OperatingPoint point) => link.Kind switch
    {
        HarnessLinkKind.Run => point.Solved.RunAmperes(link.Index),
        HarnessLinkKind.Contact => Math.Abs(point.Solved.ContactAmperes(link.Index)),
        _ => point.Solved.FuseAmperes(link.Index),
    };

    // Of the sign of the current.
    private static (double Volts, double JointVolts) LostIn(HarnessLink link, OperatingPoint point) => link.Kind switch
    {
        HarnessLinkKind.Run => point.Solved.RunDropVolts(link.Index),
        HarnessLinkKind.Contact => (point.Solved.ContactDropVolts(link.Index), 0),
        _ => (point.Solved.FuseDropVolts(link.Index), 0),
    };

    private static void AddSteps(ImmutableArray<DropEntry>.Builder entries, IReadOnlyList<HarnessStep> steps, Bike bike, OperatingPoint point, DropKind wire, DropKind joint)
    {
        // Currents flow from the live terminal on a negative-earth bike and towards it on a positive-earth one.
        double earthSign = bike.Earth == Earth.Negative ? 1 : -1;
        foreach (HarnessStep step in steps)
        {
            (double volts, double jointVolts) = LostIn(step.Link, point);
            double amperes = AmperesOf(step.Link, point);
            double sign = earthSign * (step.Forward ? 1 : -1);
            DropKind kind = step.Link.Kind switch
            {
                HarnessLinkKind.Contact => DropKind.Switch,
                HarnessLinkKind.Fuse => DropKind.Fuse,
                _ => wire,
            };
            entries.Add(Entry(kind, step.Link.Name, sign * volts, amperes, point));
            if (jointVolts != 0)
                entries.Add(Entry(joint, step.Link.Name, sign * jointVolts, amperes, point));
        }
    }

    private static DropEntry Entry(DropKind kind, string part, double volts, double amperes, OperatingPoint point) =>
        new(kind, part, ElectricPotential.FromVolts(volts), Ratio.FromDecimalFractions(volts / point.Solved.SupplyVolts), ElectricCurrent.FromAmperes(amperes));
}
