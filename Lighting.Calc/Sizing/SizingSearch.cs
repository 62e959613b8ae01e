using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Sizes for all runs together that hold every limit, of few different sizes, with little copper.</summary>
/// <remarks>
/// Greedy first, with all sizes: the smallest that strength and fuses allow; while a limit is exceeded, that run one
/// size larger which takes most off the excess for its copper; then each run smaller again as far as that holds.
/// Rounded up to each set of few sizes, this choice shows which sets need least copper. In the best of them runs are
/// exchanged, one smaller with another larger, as long as that saves copper. Every choice is judged by the solved
/// network and the fuses' own check; nothing shows that no other choice needs less.
/// </remarks>
internal sealed class SizingSearch
{
    private const double RelativeTie = 1e-9;

    /// <summary>How many sets of sizes are tried to the end.</summary>
    private const int SetsTried = 6;

    /// <summary>With at most so many runs the best two sets are taken to the end.</summary>
    private const int RunsForTwo = 12;

    /// <summary>By how many places of a set an exchange changes a run at most.</summary>
    private const int Reach = 2;

    private readonly SizingProblem _problem;
    private readonly SizingTrial _trial;
    private readonly ImmutableArray<int> _runs;

    public SizingSearch(SizingProblem problem, SizingTrial trial)
    {
        (_problem, _trial) = (problem, trial);
        // By name, so that the order of the list does not decide between equals.
        _runs = [.. problem.Runs.OrderBy(i => problem.Bike.Runs[i].Name, StringComparer.Ordinal)];
    }

    /// <summary>The sizes; null when none were found.</summary>
    public int[]? Find()
    {
        if (_problem.Kept.Index().Any(r => r.Item >= 0 && !_problem.MeetsFuse(r.Index, r.Item)))
            return null;
        if (Chosen(_problem.Offered, run => _problem.Smallest(run, _problem.Offered)) is not { } free)
            return null;
        if (_problem.Offered.Length <= _problem.MostSizes)
            return ExchangedForMany(Exchanged(free, _problem.Offered), _problem.Offered);
        var tried = new List<(int[] Sizes, int[] Set)>();
        foreach (int[] set in Sets(free))
            if (Chosen(set, run => RoundedUp(free, set)[run]) is { } start)
                tried.Add((Exchanged(start, set), set));
        // The runner-up may still overtake; of long lists that takes too long.
        int[]? best = null;
        for (int left = _runs.Length <= RunsForTwo ? 2 : 1; left > 0 && tried.Count > 0; left--)
        {
            int first = 0;
            for (int i = 1; i < tried.Count; i++)
                if (IsBetter(tried[i].Sizes, tried[first].Sizes))
                    first = i;
            int[] polished = ExchangedForMany(tried[first].Sizes, tried[first].Set);
            if (best is null || IsBetter(polished, best))
                best = polished;
            tried.RemoveAt(first);
        }

        return best;
    }

    // Of all sets of as many sizes as may be chosen, those that the choice from all needs least copper in once it is
    // rounded up to them; and, told apart, those that have nothing as large as its largest.
    private IEnumerable<int[]> Sets(int[] free)
    {
        int largest = _runs.Max(r => free[r]);
        int smallest = _runs.Min(r => _problem.Smallest(r, _problem.Offered));
        int least = _runs.Max(r => _problem.Smallest(r, _problem.Offered));
        int[] open = [.. _problem.Offered.Where(s => s >= smallest)];
        return Subsets(open, Math.Min(_problem.MostSizes, open.Length))
            .Where(s => s[^1] >= least)
            .GroupBy(s => s[^1] >= largest)
            .SelectMany(g => g.OrderBy(s => _problem.CopperOf(RoundedUp(free, s))).Take(SetsTried));
    }

    private static IEnumerable<int[]> Subsets(int[] of, int count) =>
        count == 0
            ?
            [
                [],
            ]
            : Enumerable
                .Range(0, of.Length - count + 1)
                .SelectMany(first => Subsets(of[(first + 1)..], count - 1).Select(rest => (int[])[of[first], .. rest]));

    private int[] RoundedUp(int[] free, int[] set) =>
        _problem.Choice(run => set.FirstOrDefault(s => s >= free[run], set[^1]));

    // The better of two choices from a set: enlarged from some sizes, and thinned from the largest; null where neither
    // holds.
    private int[]? Chosen(IReadOnlyList<int> set, Func<int, int> first)
    {
        if (_runs.Any(r => _problem.Smallest(r, set) < 0))
            return null;
        int[] enlarged = _problem.Choice(first),
            largest = _problem.Choice(_ => set[^1]);
        int[]? best = _trial.Holds(largest) ? Thinned(largest, set) : null;
        if (Enlarge(enlarged, set) && Thinned(enlarged, set) is var thin && (best is null || IsBetter(thin, best)))
            best = thin;
        return best;
    }

    private bool Enlarge(int[] sizes, IReadOnlyList<int> set)
    {
        while (!_trial.Carries(sizes))
            if (!EnlargeOne(sizes, set, _trial.Excess))
                return false;
        // Shorts last: what clears with small wires may not with larger ones before it, which let more through.
        while (ShortOhms(sizes) > 0)
            if (!EnlargeOne(sizes, set, ShortOhms))
                return false;
        return _trial.Carries(sizes);
    }

    private bool EnlargeOne(int[] sizes, IReadOnlyList<int> set, Func<int[], double> excessOf)
    {
        int best = -1,
            size = -1;
        double most = 0,
            excess = excessOf(sizes);
        foreach (int run in _runs)
            if (Next(sizes[run], set) is { } larger)
            {
                double copper = Math.Max(_problem.Copper[run][larger] - _problem.Copper[run][sizes[run]], 1e-12);
                double gain = (excess - excessOf(With(sizes, run, larger))) / copper;
                if (gain > most)
                    (most, best, size) = (gain, run, larger);
            }

        if (best >= 0)
            sizes[best] = size;
        return best >= 0;
    }

    // Resistance of all dead shorts that are not cleared in time.
    private double ShortOhms(int[] sizes) => _trial.ShortFailures(sizes).Sum(f => f.Clearing.LoopResistance.Ohms);

    // Each run smaller as long as that holds, the most copper first: twice as many at once after all held, half as many
    // after they did not. A size that does not hold is not tried again, nor a smaller one.
    private int[] Thinned(int[] sizes, IReadOnlyList<int> set, int kept = -1)
    {
        int[] least = _problem.Choice(run => run == kept ? sizes[run] : _problem.Smallest(run, set));
        ImmutableSortedSet<Change> open = [.. _runs.SelectMany((_, place) => Changes(place, sizes))];
        for (int count = 1; !open.IsEmpty; )
        {
            (int[] trial, ImmutableSortedSet<Change> left) = ([.. sizes], open);
            for (int i = 0; i < count && !left.IsEmpty; i++)
            {
                (int place, int size) = (left[0].Place, left[0].Size);
                left = left.Except(Changes(place, trial));
                trial[_runs[place]] = size;
                left = left.Union(Changes(place, trial));
            }

            if (_trial.Holds(trial))
                (sizes, open, count) = (trial, left, 2 * count);
            else if (count > 1)
                count /= 2;
            else
            {
                Change failed = open[0];
                open = open.Except(Changes(failed.Place, sizes));
                least[_runs[failed.Place]] = failed.Size + 1;
                open = open.Union(Changes(failed.Place, sizes));
            }
        }

        return sizes;

        IEnumerable<Change> Changes(int place, int[] of) =>
            from size in Smaller(of[_runs[place]], set)
            where size >= least[_runs[place]]
            let saved = _problem.Copper[_runs[place]][of[_runs[place]]] - _problem.Copper[_runs[place]][size]
            where saved > 0
            select new Change(saved, place, size);
    }

    // One run smaller, alone or with another one larger, as long as that needs less copper.
    private int[] Exchanged(int[] sizes, IReadOnlyList<int> set)
    {
        while (
            Best(sizes, Thinner(sizes, set).SelectMany(c => Larger(c, set).Prepend(c)))
                is { } better
        )
            sizes = better;
        return sizes;
    }

    // One run larger, and all others smaller as far as that allows.
    private int[] ExchangedForMany(int[] sizes, IReadOnlyList<int> set)
    {
        foreach (int run in _runs)
            if (
                Next(sizes[run], set) is { } larger
                && Exchanged(Thinned(With(sizes, run, larger), set, run), set) is var better
                && IsBetter(better, sizes)
            )
                sizes = better;
        return sizes;
    }

    private IEnumerable<int[]> Thinner(int[] sizes, IReadOnlyList<int> set) =>
        from run in _runs
        from size in Smaller(sizes[run], set)
        where size >= _problem.Smallest(run, set)
        select With(sizes, run, size);

    private static IEnumerable<int> Smaller(int size, IReadOnlyList<int> set) =>
        set.Take(Place(size, set)).TakeLast(Reach).Reverse();

    private IEnumerable<int[]> Larger(int[] sizes, IReadOnlyList<int> set) =>
        from run in _runs
        let place = Place(sizes[run], set)
        from places in Enumerable.Range(1, Math.Min(Reach, set.Count - 1 - place))
        select With(sizes, run, set[place + places]);

    private static int? Next(int size, IReadOnlyList<int> set) =>
        Place(size, set) is var place && place + 1 < set.Count ? set[place + 1] : null;

    private static int Place(int size, IReadOnlyList<int> set)
    {
        int place = 0;
        while (set[place] < size)
            place++;
        return place;
    }

    // The first that holds of the choices that are better, least copper first.
    private int[]? Best(int[] sizes, IEnumerable<int[]> choices) =>
        choices.Where(c => IsBetter(c, sizes)).OrderBy(_problem.CopperOf).FirstOrDefault(_trial.Holds);

    // Less copper; of equal copper fewer different sizes, then fewer changed runs.
    private bool IsBetter(int[] one, int[] other)
    {
        double copper = _problem.CopperOf(one),
            known = _problem.CopperOf(other);
        return Math.Abs(copper - known) <= known * RelativeTie
            ? Order(one).CompareTo(Order(other)) < 0
            : copper < known;
    }

    private (int Different, int Changed) Order(int[] sizes) =>
        (
            _runs.Select(r => sizes[r]).Distinct().Count(),
            _runs.Count(r => _problem.Sizes[sizes[r]] != _problem.Bike.Runs[r].Wire)
        );

    private static int[] With(int[] sizes, int run, int size)
    {
        int[] changed = [.. sizes];
        changed[run] = size;
        return changed;
    }

    // One run smaller: by place in the order of names.
    private readonly record struct Change(double Saved, int Place, int Size) : IComparable<Change>
    {
        public int CompareTo(Change other) =>
            (-Saved, Place, -Size).CompareTo((-other.Saved, other.Place, -other.Size));
    }
}
