using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Graph of a bike's wiring: points and parts, each numbered once, and paths.</summary>
/// <remarks>
/// Of the wiring alone: bikes that are wired alike share one. Immutable, but that switches and carrying contacts are
/// made when they are first asked for, by two threads at once twice and alike. Without runs the lamps are connected
/// directly across the battery, behind the fuse if there is one, and the contacts are left out.
/// </remarks>
internal sealed class HarnessGraph
{
    /// <summary>Number of battery plus.</summary>
    public const int Plus = 0;

    /// <summary>Number of battery minus.</summary>
    public const int Minus = 1;

    /// <summary>Cost of a part that no path may use.</summary>
    public const double NoWay = double.PositiveInfinity;

    private readonly Bike _bike;
    private readonly Dictionary<string, int> _numbers = new(Name.Comparer);
    private readonly HarnessPart[][] _partsAt;

    /// <param name="bike">The bike; with runs, every lamp and fuse names its points.</param>
    /// <exception cref="ArgumentException">A lamp or fuse of a bike with runs names no points.</exception>
    public HarnessGraph(Bike bike)
    {
        _bike = bike;
        var points = ImmutableArray.CreateBuilder<string>();
        Point(Bike.BatteryPlus);
        Point(Bike.BatteryMinus);
        (Live, Earth) = (Point(bike.LivePoint), Point(bike.EarthPoint));
        if (!bike.HasNetwork)
            bike = Straight(bike);
        int contacts = bike.Runs.Length,
            fuses = contacts + bike.Switches.Length,
            lamps = fuses + bike.Fuses.Length;
        // Points are numbered in the order of the fuses, contacts, runs and lamps; of equal ways one over runs is
        // taken, then one over contacts.
        Fuses = [.. bike.Fuses.Select((f, i) => Part(fuses, HarnessPartKind.Fuse, i, f.Name, f.From, f.To))];
        Contacts =
        [
            .. bike.Switches.Select((c, i) => Part(contacts, HarnessPartKind.Contact, i, c.Name, c.From, c.To)),
        ];
        Runs = [.. bike.Runs.Select((r, i) => Part(0, HarnessPartKind.Run, i, r.Name, r.From, r.To))];
        Lamps = [.. bike.Lamps.Select((l, i) => Part(lamps, HarnessPartKind.Lamp, i, l.Lamp, l.Feed, l.Return))];
        Parts = [.. Runs, .. Contacts, .. Fuses, .. Lamps];
        Points = points.ToImmutable();
        List<HarnessPart>[] at = [.. Points.Select(_ => new List<HarnessPart>(4))];
        foreach (HarnessPart part in Parts)
        {
            at[part.A].Add(part);
            if (part.B != part.A)
                at[part.B].Add(part);
        }

        _partsAt = [.. at.Select(a => a.ToArray())];

        HarnessPart Part(int first, HarnessPartKind kind, int index, string name, string? from, string? to) =>
            from is null || to is null
                ? throw new ArgumentException($"'{name}' must name its points, since the bike has runs.", nameof(bike))
                : new HarnessPart(first + index, kind, index, name, Point(from), Point(to));

        int Point(string name)
        {
            if (!_numbers.TryGetValue(name, out int number))
            {
                _numbers.Add(name, number = points.Count);
                points.Add(name);
            }

            return number;
        }
    }

    /// <summary>The names of the points, battery plus and minus first.</summary>
    public ImmutableArray<string> Points { get; }

    /// <summary>All parts: runs, contacts, fuses, lamps.</summary>
    public ImmutableArray<HarnessPart> Parts { get; }

    public ImmutableArray<HarnessPart> Runs { get; }

    public ImmutableArray<HarnessPart> Contacts { get; }

    public ImmutableArray<HarnessPart> Fuses { get; }

    public ImmutableArray<HarnessPart> Lamps { get; }

    /// <summary>Number of the battery terminal that the frame is not joined to.</summary>
    public int Live { get; }

    /// <summary>Number of the battery terminal that is joined to the frame.</summary>
    public int Earth { get; }

    /// <summary>The bike's switches.</summary>
    public Switches Switches => field ??= new Switches(_bike, this);

    /// <summary>Tells which closed contacts may carry current.</summary>
    public CarryingContacts Carrying => field ??= new CarryingContacts(this);

    /// <summary>Number of a point; −1 where there is no such point.</summary>
    public int NumberOf(string point) => _numbers.GetValueOrDefault(point, -1);

    /// <summary>Least-cost paths from a point; of equal costs those with the fewest parts.</summary>
    /// <param name="start">The point.</param>
    /// <param name="cost">Cost of a part, zero or more; <see cref="NoWay"/> closes it.</param>
    /// <param name="widest">Whether the cost of a path is that of its most expensive part, not the sum.</param>
    /// <param name="pastBattery">Whether a path may pass through a battery terminal.</param>
    public Reached From(int start, Func<HarnessPart, double> cost, bool widest = false, bool pastBattery = true)
    {
        double[] costs = new double[Points.Length];
        int[] steps = new int[costs.Length];
        var through = new HarnessPart?[costs.Length];
        Array.Fill(costs, NoWay);
        costs[start] = 0;
        // Harnesses are nearly trees: a point is seldom reached again by a better way and queued once more.
        var queue = new Queue<int>();
        queue.Enqueue(start);
        while (queue.TryDequeue(out int point))
        {
            if (!pastBattery && point != start && point is Plus or Minus)
                continue;
            foreach (HarnessPart part in _partsAt[point])
            {
                int next = part.Other(point);
                double its = cost(part),
                    total = widest ? Math.Max(costs[point], its) : costs[point] + its;
                if (total > costs[next] || total == costs[next] && steps[point] + 1 >= steps[next])
                    continue;
                (costs[next], steps[next], through[next]) = (total, steps[point] + 1, part);
                queue.Enqueue(next);
            }
        }

        return new Reached(this, costs, through);
    }

    /// <summary>Shortest paths from a point over the parts that conduct in a state.</summary>
    /// <param name="start">The point.</param>
    /// <param name="closed">The contacts that are closed.</param>
    /// <param name="passes">Filter on the conducting parts; null for all.</param>
    public Reached From(int start, ContactSet closed, Func<HarnessPart, bool>? passes = null) =>
        From(start, p => p.Joins(closed) && passes?.Invoke(p) != false ? 1 : NoWay);

    /// <summary>Whether closed parts alone, and no load, join the feed of a lamp to the live terminal and its return to
    /// the earth.</summary>
    /// <param name="lamp">The lamp.</param>
    /// <param name="closed">The contacts that are closed.</param>
    public bool IsFed(HarnessPart lamp, ContactSet closed) =>
        From(Live, closed).Reaches(lamp.A) && From(Earth, closed).Reaches(lamp.B);

    /// <summary>A path in words: its points and parts in order.</summary>
    /// <param name="start">The point where it begins.</param>
    /// <param name="way">Its parts.</param>
    public string Described(int start, ImmutableArray<HarnessPart> way)
    {
        int at = start;
        return way.IsEmpty
            ? $"connected directly to {Points[start]}"
            : $"{Points[start]} > {string.Join(" > ", way.Select(p => $"{p.Name} > {Points[at = p.Other(at)]}"))}";
    }

    private static Bike Straight(Bike bike)
    {
        ImmutableArray<Fuse> fuses =
        [
            .. bike.Fuses.Select(f => f with { From = bike.LivePoint, To = $"{f.Name} fuse out" }),
        ];
        string feed = fuses.IsEmpty ? bike.LivePoint : fuses[0].To!;
        return bike with
        {
            Switches = [],
            Fuses = fuses,
            Lamps = [.. bike.Lamps.Select(l => l with { Feed = feed, Return = bike.EarthPoint })],
        };
    }
}
