// What repairing a part gives every lamp behind it: the solved harness, stepped from its solution to the repaired one.
using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Gains of repairs for lamps of one solution.</summary>
/// <remarks>
/// A repair changes one conductance of a solved network: Newton's method goes on from the solution and arrives in two
/// or three steps, once for all lamps that the part feeds. Wires stay as warm as they are. A repaired part keeps a
/// picoohm, so that no points merge and the order of elimination stays.
/// </remarks>
internal sealed class Repairs
{
    private const double RepairedOhms = 1e-12;

    private readonly HarnessNetwork _network;
    private readonly Dictionary<string, int> _lamps;
    private readonly Dictionary<string, int> _runs;
    private readonly Dictionary<string, int> _contacts;
    private readonly Dictionary<string, int> _fuses;

    public Repairs(HarnessNetwork network)
    {
        _network = network;
        Bike bike = network.Bike;
        _lamps = Numbers(bike.Lamps, l => l.Lamp);
        _runs = Numbers(bike.Runs, r => r.Name);
        _contacts = Numbers(bike.Switches, s => s.Name);
        _fuses = Numbers(bike.Fuses, f => f.Name);
    }

    /// <summary>For each breakdown its costliest parts with their gains.</summary>
    /// <exception cref="InvalidOperationException">A breakdown is of another bike.</exception>
    /// <exception cref="NetworkNotSolvedException">A repaired harness has no operating point.</exception>
    public ImmutableArray<ImmutableArray<RepairBenefit>> Of(IReadOnlyList<VoltageDropBreakdown> breakdowns, int count)
    {
        var gains = new ImmutableArray<RepairBenefit>[breakdowns.Count];
        // Lamps of the same currents share their solution, whatever their settings.
        foreach (
            IGrouping<SolvedCircuit, int> alike in Enumerable
                .Range(0, breakdowns.Count)
                .GroupBy(i => breakdowns[i].Solved)
        )
            SolveAlike(breakdowns, [.. alike], count, gains);
        return ImmutableArray.Create(gains);
    }

    private void SolveAlike(
        IReadOnlyList<VoltageDropBreakdown> breakdowns,
        int[] alike,
        int count,
        ImmutableArray<RepairBenefit>[] gains
    )
    {
        VoltageDropItem[][] costliest =
        [
            .. alike.Select(i =>
                breakdowns[i]
                    .Entries.Where(e => e.Kind != VoltageDropKind.Battery && e.Voltage.Volts > 0)
                    .OrderByDescending(e => e.Voltage.Volts)
                    .Take(count)
                    .ToArray()
            ),
        ];
        var repaired = new RepairBenefit[alike.Length][];
        for (int i = 0; i < alike.Length; i++)
            repaired[i] = new RepairBenefit[costliest[i].Length];
        VoltageDropBreakdown first = breakdowns[alike[0]];
        HarnessSolver? solver = null;
        foreach (
            var wanted in costliest
                .SelectMany((items, i) => items.Select((item, place) => (item, i, place)))
                .GroupBy(w => (IsJoint: IsJoint(w.item.Kind), Kind: WithoutSide(w.item.Kind), Part: w.item.Part))
        )
        {
            solver ??= SolverOf(first);
            HarnessSolver with = solver;
            SolveRepaired(with, first, wanted.First().item, ReadGains);

            void ReadGains()
            {
                foreach ((VoltageDropItem item, int i, int place) in wanted)
                {
                    LampState lamp = breakdowns[alike[i]].Lamp;
                    var volts = ElectricPotential.FromVolts(with.LampVolts(NumberOf(lamp.Lamp.Lamp, _lamps)));
                    repaired[i][place] = new RepairBenefit(
                        item,
                        volts - lamp.Voltage,
                        lamp.Lamp.Specification.PublishedLightAt(volts) - lamp.PublishedLight
                    );
                }
            }
        }

        for (int i = 0; i < alike.Length; i++)
            gains[alike[i]] = ImmutableArray.Create(repaired[i]);
    }

    private HarnessSolver SolverOf(VoltageDropBreakdown breakdown)
    {
        HarnessSolver solver = (
            breakdown.Solved.IsApart ? _network.AtGenerator : _network.AtBattery
        ).CreateSolver();
        solver.SetBattery(breakdown.Solved.Battery);
        Close(solver, breakdown, breakdown.Solved.WireOhms);
        SolveBehind(solver, breakdown);
        return solver;
    }

    private static void Close(HarnessSolver solver, VoltageDropBreakdown breakdown, double[] wireOhms) =>
        solver.Close(breakdown.Setting, solver.CarryingIn(breakdown.Setting), wireOhms);

    private static double SolveBehind(HarnessSolver solver, VoltageDropBreakdown breakdown) =>
        solver.Behind(breakdown.Setting, breakdown.SupplyVoltage.Volts, breakdown.Solved.SourceOhms).Amperes;

    /// <param name="solver">The harness as it is, before and after.</param>
    /// <param name="breakdown">Any of the solution.</param>
    /// <param name="item">What is repaired.</param>
    /// <param name="read">Called while it is solved as repaired.</param>
    private void SolveRepaired(
        HarnessSolver solver,
        VoltageDropBreakdown breakdown,
        VoltageDropItem item,
        Action read
    )
    {
        Bike bike = _network.Bike;
        double[] wires = breakdown.Solved.WireOhms;
        switch (item.Kind)
        {
            case VoltageDropKind.Fuse:
                int fuse = NumberOf(item.Part, _fuses);
                Between(ohms => solver.SetFuse(fuse, ohms), FuseTable.ResistanceOf(bike.Fuses[fuse]));
                break;
            case VoltageDropKind.Switch:
                int contact = NumberOf(item.Part, _contacts);
                Between(ohms => solver.SetContact(contact, ohms), bike.Switches[contact].Resistance);
                break;
            default:
                int run = NumberOf(item.Part, _runs);
                ElectricResistance wire = bike.Runs[run].WireResistance(bike.WireTemperature),
                    joints = bike.Runs[run].TotalJointResistance;
                if (IsJoint(item.Kind))
                {
                    Between(ohms => solver.SetRun(run, wire, ohms), joints);
                    break;
                }

                wires = [.. wires];
                Between(
                    ohms =>
                    {
                        solver.SetRun(run, ohms, joints);
                        wires[run] = ohms.Ohms;
                    },
                    wire
                );
                break;
        }

        void Between(Action<ElectricResistance> set, ElectricResistance asIs)
        {
            set(ElectricResistance.FromOhms(RepairedOhms));
            Close(solver, breakdown, wires);
            double amperes = SolveBehind(solver, breakdown);
            // So much flows through a dead short alone, which the true repair leads to.
            if (Math.Abs(amperes) * RepairedOhms > 1e-6 * breakdown.SupplyVoltage.Volts)
            {
                set(ElectricResistance.Zero);
                Close(solver, breakdown, wires);
                SolveBehind(solver, breakdown);
            }

            read();
            set(asIs);
        }
    }

    private static bool IsJoint(VoltageDropKind kind) =>
        kind is VoltageDropKind.FeedJoint or VoltageDropKind.ReturnJoint;

    // A wire is the same wire for the lamp it feeds and the lamp it leads back.
    private static VoltageDropKind WithoutSide(VoltageDropKind kind) =>
        kind switch
        {
            VoltageDropKind.ReturnJoint => VoltageDropKind.FeedJoint,
            VoltageDropKind.ReturnWire => VoltageDropKind.FeedWire,
            _ => kind,
        };

    private static int NumberOf(string name, Dictionary<string, int> numbers) =>
        numbers.TryGetValue(name, out int number)
            ? number
            : throw new InvalidOperationException($"The breakdown is of another bike: this one has no '{name}'.");

    private static Dictionary<string, int> Numbers<T>(ImmutableArray<T> parts, Func<T, string> name)
    {
        var numbers = new Dictionary<string, int>(parts.Length, Name.Comparer);
        for (int i = 0; i < parts.Length; i++)
            numbers.TryAdd(name(parts[i]), i);
        return numbers;
    }
}
