using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts a fuse box into a bike.</summary>
internal sealed class FuseBox
{
    private readonly Bike _bike;
    private readonly HarnessGraph _graph;
    private readonly HashSet<string> _points;
    private readonly List<Run> _newRuns = [];
    private readonly List<Fuse> _ways = [];

    private FuseBox(Bike bike, HarnessGraph graph)
    {
        (_bike, _graph) = (bike, graph);
        _points = new HashSet<string>(
            graph.Points.Concat(bike.Runs.Select(r => r.Name)).Concat(bike.Fuses.Select(f => f.Name)),
            Name.Comparer
        );
    }

    /// <summary>The bike with the box: new wires, and the points that boxes are fed from.</summary>
    internal sealed record Built(Bike Bike, ImmutableArray<Run> NewRuns, ImmutableArray<string> Taps);

    /// <summary>Puts it in.</summary>
    /// <param name="bike">The bike, with a main fuse at most.</param>
    /// <param name="groups">For each way its branches, all of one source.</param>
    /// <param name="ratings">Rating of each way in amperes.</param>
    /// <param name="main">The main fuse, if there is one, and its rating in amperes.</param>
    /// <param name="lead">Length of each new wire.</param>
    public static Built Fit(
        Bike bike,
        ImmutableArray<ImmutableArray<FeedBranch>> groups,
        ImmutableArray<double> ratings,
        (string? Name, double Rating) main,
        Length lead
    ) => new FuseBox(bike, new HarnessGraph(bike)).Fit(groups, ratings, main, lead);

    /// <summary>The bike without its fuses, but for one that feeds everything; where none does, with one behind the
    /// battery lead, if there is one such lead. Where several wires lead from the battery, the fuse that feeds most is
    /// kept and those behind it are taken out: what others feed is not planned, and keeps its fuses.</summary>
    /// <returns>The bike, and the name of its main fuse; null where it has none.</returns>
    public static (Bike Bike, string? Main) WithMainAlone(Bike bike)
    {
        var graph = new HarnessGraph(bike);
        var branches = new FeedBranches(bike, graph);
        ImmutableArray<Fuse> fuses = bike.Fuses;
        int main = Enumerable.Range(0, fuses.Length).FirstOrDefault(branches.FeedsAll, -1);
        if (main < 0)
        {
            Bike bare = fuses.Aggregate(bike, Merged);
            if (WithMain(bare) is { } led)
                return (led, led.Fuses[0].Name);
            if (fuses.IsEmpty)
                return (bare, null);
            main = Enumerable.Range(0, fuses.Length).MaxBy(f => branches.FedThrough(f).Length);
            Reached around = branches.Around(main);
            return (
                fuses
                    .Where(
                        (_, i) =>
                            i != main && !around.Reaches(graph.Fuses[i].A) && !around.Reaches(graph.Fuses[i].B)
                    )
                    .Aggregate(bike, Merged),
                fuses[main].Name
            );
        }

        return (fuses.Where((_, i) => i != main).Aggregate(bike, Merged), fuses[main].Name);
    }

    private Built Fit(
        ImmutableArray<ImmutableArray<FeedBranch>> groups,
        ImmutableArray<double> ratings,
        (string? Name, double Rating) main,
        Length lead
    )
    {
        Bike bike = _bike with
        {
            Fuses =
            [
                .. _bike.Fuses.Select(f =>
                    f.Name == main.Name
                        ? f with
                        {
                            Rating = ElectricCurrent.FromAmperes(main.Rating),
                            Style = FuseStyle.Blade,
                            Resistance = null,
                            IsMarkedWithBlowingCurrent = false,
                        }
                        : f
                ),
            ],
        };
        Dictionary<int, string> boxes = [];
        for (int w = 0; w < groups.Length; w++)
        {
            int source = groups[w][0].Source;
            // A fuse alone at its point is in line there, without a box.
            if (groups.Count(g => g[0].Source == source) > 1 && !boxes.ContainsKey(source))
                boxes[source] = Box(source, lead);
            var fuse = new Fuse
            {
                Name = Unused($"way {w + 1}"),
                From = boxes.GetValueOrDefault(source) ?? _graph.Points[source],
                To = Unused($"way {w + 1} out"),
                Rating = ElectricCurrent.FromAmperes(ratings[w]),
            };
            _ways.Add(fuse);
            foreach (HarnessPart head in groups[w].SelectMany(b => b.Heads))
                bike = Moved(bike, head, _graph.Points[source], fuse.To);
        }

        bike = bike with { Runs = [.. bike.Runs, .. _newRuns], Fuses = [.. bike.Fuses, .. _ways] };
        return new Built(bike, [.. _newRuns], [.. boxes.Keys.Select(s => _graph.Points[s])]);
    }

    /// <summary>The ends of a bike's parts that are at another point with a plan; the plan keeps its runs, contacts and
    /// loads in their order.</summary>
    public static ImmutableArray<MovedEnd> MovedEnds(Bike given, Bike planned) =>
        [
            .. given
                .Runs.Zip(planned.Runs)
                .SelectMany(r => Ends(r.First.Name, (r.First.From, r.First.To), (r.Second.From, r.Second.To))),
            .. given
                .Switches.Zip(planned.Switches)
                .SelectMany(c => Ends(c.First.Name, (c.First.From, c.First.To), (c.Second.From, c.Second.To))),
            .. given
                .Lamps.Zip(planned.Lamps)
                .SelectMany(l =>
                    Ends(l.First.Lamp, (l.First.Feed!, l.First.Return!), (l.Second.Feed!, l.Second.Return!))
                ),
            .. given
                .Fuses.Select(f => (Was: f, Is: planned.Fuses.FirstOrDefault(p => p.Name == f.Name)))
                .Where(f => f.Is is not null)
                .SelectMany(f => Ends(f.Was.Name, (f.Was.From!, f.Was.To!), (f.Is!.From!, f.Is.To!))),
        ];

    private static IEnumerable<MovedEnd> Ends(string part, (string, string) was, (string, string) now)
    {
        if (!Name.Equal(was.Item1, now.Item1))
            yield return new MovedEnd(part, was.Item1, now.Item1);
        if (!Name.Equal(was.Item2, now.Item2))
            yield return new MovedEnd(part, was.Item2, now.Item2);
    }

    private string Box(int source, Length lead)
    {
        string box = Unused("fuse box");
        _newRuns.Add(
            new Run
            {
                Name = Unused($"{box} feed"),
                From = _graph.Points[source],
                To = box,
                Wire = WireTable.Of(WireConstruction.MetricCable)[^1],
                WireIsOpen = true,
                Length = lead,
                Joints = 2,
                JointResistance = BikeDefaults.JointResistance,
                AssumesJoints = true,
                Cable = _bike.Cable ?? CableKind.Ordinary,
            }
        );
        return box;
    }

    private static Bike Moved(Bike bike, HarnessPart head, string from, string to)
    {
        string At(string point) => Name.Equal(point, from) ? to : point;
        return head.Kind switch
        {
            HarnessPartKind.Run => bike with
            {
                Runs = Changed(bike.Runs, r => r with { From = At(r.From), To = At(r.To) }),
            },
            HarnessPartKind.Contact => bike with
            {
                Switches = Changed(bike.Switches, c => c with { From = At(c.From), To = At(c.To) }),
            },
            _ => bike with { Lamps = Changed(bike.Lamps, l => l with { Feed = At(l.Feed!), Return = At(l.Return!) }) },
        };

        ImmutableArray<T> Changed<T>(ImmutableArray<T> parts, Func<T, T> change) =>
            parts.SetItem(head.Index, change(parts[head.Index]));
    }

    private string Unused(string name)
    {
        string own = name;
        for (int n = 2; !_points.Add(own); n++)
            own = $"{name} no. {n}";
        return own;
    }

    // A fuse that goes: its two points become one.
    private static Bike Merged(Bike bike, Fuse fuse)
    {
        bool keepsTo = Name.Equal(fuse.To!, Bike.BatteryPlus) || Name.Equal(fuse.To!, Bike.BatteryMinus);
        (string gone, string kept) = keepsTo ? (fuse.From!, fuse.To!) : (fuse.To!, fuse.From!);
        string At(string point) => Name.Equal(point, gone) ? kept : point;
        return bike with
        {
            Fuses =
            [
                .. bike
                    .Fuses.Where(f => f.Name != fuse.Name)
                    .Select(f => f with { From = At(f.From!), To = At(f.To!) }),
            ],
            Runs = [.. bike.Runs.Select(r => r with { From = At(r.From), To = At(r.To) })],
            Switches = [.. bike.Switches.Select(s => s with { From = At(s.From), To = At(s.To) })],
            Lamps = [.. bike.Lamps.Select(l => l with { Feed = At(l.Feed!), Return = At(l.Return!) })],
        };
    }

    // Behind the one wire that the battery feeds everything through; null where there is no such wire.
    private static Bike? WithMain(Bike bike)
    {
        HarnessPart[] first =
        [
            .. new HarnessGraph(bike) is var graph
                ? graph.Parts.Where(p => p.A == graph.Live || p.B == graph.Live)
                : [],
        ];
        if (first is not [{ Kind: HarnessPartKind.Run } lead])
            return null;
        Run run = bike.Runs[lead.Index];
        bool isForward = Name.Equal(run.From, bike.LivePoint);
        string far = isForward ? run.To : run.From;
        const string Before = "main fuse in";
        return bike with
        {
            Runs = bike.Runs.SetItem(lead.Index, isForward ? run with { To = Before } : run with { From = Before }),
            Fuses =
            [
                .. bike.Fuses,
                new Fuse
                {
                    Name = "main",
                    From = Before,
                    To = far,
                    Rating = ElectricCurrent.FromAmperes(15),
                },
            ],
        };
    }
}
