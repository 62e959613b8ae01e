using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts a relay before a lamp: near the battery, fed through a fuse of its own, its coil in the lamp's
/// place.</summary>
/// <remarks>
/// The wire that fed the lamp feeds the coil, between terminals 86 and 85; battery, fuse, terminals 30 and 87 and one
/// new wire feed the lamp. The new wires are as long as the present feed, of the smallest listed size up to 4 mm² that
/// is rated for the fuse; the lamp's is no smaller than the smallest wire of the present feed and drops 2 % of the
/// system voltage at most (common practice, no source); that to the fuse is at least that of a battery lead. The fuse
/// is the smallest blade that is found suitable. What the lamp gains is the difference between the
/// two solved networks.
/// </remarks>
public static class RelayPlanner
{
    private const double LampWireDrop = 0.02;
    private static readonly Length s_short = Length.FromMeters(0.3);
    private static readonly double s_largest = Constants.Of("largest_plan_mm2");
    private static readonly double s_batteryLead = Constants.Of("battery_lead_mm2");
    private static readonly ElectricCurrent s_worthIt = ElectricCurrent.FromAmperes(2);

    /// <summary>Plans a relay for a lamp.</summary>
    /// <param name="bike">The bike, with runs.</param>
    /// <param name="lamp">Name of the lamp; case does not matter.</param>
    /// <param name="options">The settings, engine, supply and fuses; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The plan, or why none was found.</returns>
    /// <exception cref="ArgumentException">No lamp has that name (the message suggests the nearest), or the condition
    /// names what the bike does not have.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RelayPlan Plan(
        Bike bike,
        string lamp,
        CheckOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(bike);
        int index = PartNames.PlaceOf(lamp, bike.Lamps, l => l.Lamp, "lamp", nameof(lamp));
        options ??= new CheckOptions();
        return Plan(bike, index, BikeSolution.Solve(bike, options, cancellationToken), options, cancellationToken);
    }

    /// <summary>Plans for the lamps that would gain most: those that draw 2 A or more and have the largest
    /// drop.</summary>
    internal static ImmutableArray<RelayPlan> ForLargestDrops(
        BikeReport report,
        CheckOptions options,
        int count,
        CancellationToken cancellationToken
    )
    {
        if (!report.Bike.HasNetwork || report.Bike.Lighting == LightingSupply.Direct || report.WorstDrops.IsEmpty)
            return [];
        BikeSolution solution = BikeSolution.Solve(report.Bike, options, cancellationToken);
        return
        [
            .. report
                .WorstDrops.Where(d =>
                    d.Lamp.Lamp.Specification.Type is not (LampType.Fixed or LampType.Resistor)
                    && Math.Abs(d.Lamp.Current.Amperes) >= s_worthIt.Amperes
                )
                .OrderByDescending(d => d.Lamp.Drop!.Value.DecimalFractions)
                .Take(count)
                .Select(d =>
                    Plan(report.Bike, report.Bike.Lamps.IndexOf(d.Lamp.Lamp), solution, options, cancellationToken)
                )
                .Where(p => p.IsFeasible && p.VoltageThen > p.VoltageNow),
        ];
    }

    private static RelayPlan Plan(
        Bike bike,
        int index,
        BikeSolution solution,
        CheckOptions options,
        CancellationToken cancellationToken
    )
    {
        FittedLamp lamp = bike.Lamps[index];
        if (!bike.HasNetwork)
            return Failed(lamp, "the bike lists no runs");
        if (bike.Lighting == LightingSupply.Direct)
            return Failed(lamp, "a lighting coil feeds the lamps: there is no battery to feed them from");
        HarnessGraph graph = solution.Network.Graph;
        HarnessPart part = graph.Lamps[index];
        ImmutableArray<OperatingPoint?> worstOfEach = IntendedOnStates.WorstOfEach(
            bike,
            solution.Points,
            options.Fuses.MomentarySwitches
        );
        if (worstOfEach[index] is not { } worst || !graph.IsFed(part, worst.Closed))
            return Failed(lamp, "no setting feeds it");
        ImmutableArray<HarnessPart> way = graph.From(graph.Live, worst.Closed).PathTo(part.A);
        if (way.Any(p => p.Kind == HarnessPartKind.Contact && bike.Switches[p.Index].IsRelay))
            return Failed(lamp, "a relay feeds it already");
        if (!way.Any(p => p.Kind == HarnessPartKind.Contact))
            return Failed(lamp, "no switch is in its feed");
        ContactSet none = ContactSet.Where(bike.Switches.Length, _ => false);
        if (!graph.From(graph.Earth, none).Reaches(part.B))
            return Failed(lamp, "a switch is in its return to earth");
        var length = Length.FromMeters(
            Math.Max(
                s_short.Meters,
                way.Where(p => p.Kind == HarnessPartKind.Run).Sum(p => bike.Runs[p.Index].Length.Meters)
            )
        );
        double least = way.Where(p => p.Kind == HarnessPartKind.Run)
            .Select(p => bike.Runs[p.Index].Wire.CopperArea.SquareMillimeters)
            .DefaultIfEmpty(0)
            .Min();
        // Of fuses one behind the other the smallest opens.
        var coilFuse = ElectricCurrent.FromAmperes(
            way.Where(p => p.Kind == HarnessPartKind.Fuse)
                .Select(p => FuseJudge.ContinuousAmperes(bike.Fuses[p.Index], options.Fuses))
                .DefaultIfEmpty(BranchLoads.UnknownWireAmperes)
                .Min()
        );
        string why = "no blade fuse carries it";
        foreach (
            ElectricCurrent rating in FuseTable
                .Of(FuseStyle.Blade)
                .Select(f => f.Rating)
                .Where(r =>
                    r.Amperes * options.Fuses.ContinuousLoadFactor.DecimalFractions
                    >= Math.Abs(worst.Solved.LampAmperes(index))
                )
        )
        {
            if (
                Fitted(bike, index, (length, Math.Min(least, s_largest)), rating, coilFuse, options.Fuses)
                is not { } fitted
            )
                return Failed(lamp, $"no wire up to {s_largest} mm² is rated for its fuses");
            BikeSolution then = BikeSolution.Solve(fitted.Bike, options, cancellationToken);
            FuseSuitability judged = FuseCheck.Evaluate(
                fitted.Bike,
                then.FusePoints,
                options.Fuses,
                cancellationToken
            )[^1];
            why = judged.Headline;
            if (judged.Verdict == FuseVerdict.Overloaded)
                continue;
            if (
                judged.Verdict != FuseVerdict.Suits
                || then.Points.FirstOrDefault(p => p.Setting.Equals(worst.Setting)) is not { } point
            )
                break;
            if (point.Lamps[index].Voltage <= worst.Lamps[index].Voltage)
                return Failed(
                    lamp,
                    $"it gains nothing: {FindingWords.Text(worst.Lamps[index].Voltage)} now, "
                        + $"{FindingWords.Text(point.Lamps[index].Voltage)} with one"
                );
            return new RelayPlan
            {
                Lamp = lamp,
                Setting = worst.Setting,
                VoltageNow = worst.Lamps[index].Voltage,
                VoltageThen = point.Lamps[index].Voltage,
                LightNow = worst.Lamps[index].PublishedLight,
                LightThen = point.Lamps[index].PublishedLight,
                Relay = fitted.Bike.Relays[^1],
                Fuse = fitted.Bike.Fuses[^1],
                NewRuns = fitted.Runs,
                FormerFeed = lamp.Feed!,
                Planned = fitted.Bike,
            };
        }

        return Failed(lamp, why);
    }

    // Null where no wire is large enough.
    private static (Bike Bike, ImmutableArray<Run> Runs)? Fitted(
        Bike bike,
        int index,
        (Length Length, double LeastArea) feed,
        ElectricCurrent rating,
        ElectricCurrent coilFuse,
        FuseOptions options
    )
    {
        Length length = feed.Length;
        FittedLamp lamp = bike.Lamps[index];
        var names = new HashSet<string>(
            bike.Lamps.Select(l => l.Lamp)
                .Concat(bike.Switches.SelectMany(s => (string[])[s.Switch, s.From, s.To]))
                .Concat(bike.Runs.SelectMany(r => (string[])[r.Name, r.From, r.To]))
                .Concat(bike.Fuses.SelectMany(f => (string[])[f.Name, f.From!, f.To!]))
                .Concat(bike.Lamps.SelectMany(l => (string[])[l.Feed!, l.Return!])),
            Name.Comparer
        );
        string name = Unused(
            lamp.Lamp.EndsWith(" relay", StringComparison.OrdinalIgnoreCase) ? $"{lamp.Lamp} 2" : $"{lamp.Lamp} relay"
        );
        var relay = Relay.Typical(name, bike.SystemVoltage);
        string fuseIn = Unused($"{name} fuse in"),
            lampFeed = Unused($"{lamp.Lamp} feed from relay");
        double most = LampWireDrop * bike.SystemVoltage.Volts;
        if (
            Wire(rating, ElectricCurrent.Zero, s_short, most, s_batteryLead) is not { } supplyWire
            || Wire(rating, lamp.Specification.ReferenceCurrent * lamp.Quantity, length, most, feed.LeastArea)
                is not { } lampWire
            || Wire(coilFuse, ElectricCurrent.Zero, length, most, 0) is not { } coilWire
        )
            return null;
        ImmutableArray<Run> runs =
        [
            New($"{name} supply", bike.LivePoint, fuseIn, supplyWire, s_short),
            New($"{name} lamp wire", relay.Contacts[0].To, lampFeed, lampWire, length),
            New($"{name} coil wire", lamp.Feed!, relay.CoilFrom, coilWire, length),
            New($"{name} earth", relay.CoilTo, bike.EarthPoint, coilWire, s_short),
        ];
        return (
            (
                bike with
                {
                    Lamps = bike.Lamps.SetItem(index, lamp with { Feed = lampFeed }),
                    Runs = [.. bike.Runs, .. runs],
                    Fuses =
                    [
                        .. bike.Fuses,
                        new Fuse
                        {
                            Name = name,
                            From = fuseIn,
                            To = relay.Contacts[0].From,
                            Rating = rating,
                        },
                    ],
                }
            ).WithRelay(relay),
            runs
        );

        string Unused(string wanted)
        {
            string own = wanted;
            for (int n = 2; !names.Add(own); n++)
                own = $"{wanted} no. {n}";
            return own;
        }

        Run New(string run, string from, string to, WireSize wire, Length its) =>
            new()
            {
                Name = Unused(run),
                From = from,
                To = to,
                Wire = wire,
                Length = its,
                Joints = 2,
                JointResistance = BikeDefaults.JointResistance,
                AssumesJoints = true,
                Cable = bike.Cable is null ? CableKind.Ordinary : null,
            };

        WireSize? Wire(ElectricCurrent fuse, ElectricCurrent load, Length its, double volts, double least) =>
            WireTable
                .Of(WireConstruction.MetricCable)
                .FirstOrDefault(w =>
                    w.CopperArea.SquareMillimeters
                        >= Math.Max(least, new WireSizingOptions().MinimumArea.SquareMillimeters)
                    && w.CopperArea.SquareMillimeters <= s_largest + 1e-9
                    && CurrentRating
                        .Calculate(w, options.AirRoundWires(bike), 1, bike.Cable ?? CableKind.Ordinary)
                        .Current
                        is { } rated
                    && rated.Amperes >= fuse.Amperes - 1e-9
                    && w.Resistance(its, bike.WireTemperature).Ohms * load.Amperes <= volts
                );
    }

    private static RelayPlan Failed(FittedLamp lamp, string why) => new() { Lamp = lamp, Explanation = why };
}
