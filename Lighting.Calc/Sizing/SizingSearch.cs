using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Sizes for all runs together that hold every limit, of few different sizes, with little copper.</summary>
/// <remarks>
/// Greedy first, with all sizes: the smallest that strength and fuses allow; while a limit is exceeded, that run one
/// size larger which takes most off the excess for its copper; then each run smaller again as far as that holds.
/// Rounded up to each set of few sizes, this choice shows which sets need least copper. In the best of them runs are
/// exchanged, one smaller with another larger, as long as that saves copper. Every choice is judged by the solved
/// network and the fuses' own check; nothing shows that no other choice needs less.
/// Of a long list, whose network takes long to solve, runs are enlarged by the slope of the drops, several at once;
/// fewer sets are tried, and exchanges in the best of them alone, as many as are allowed.
/// </remarks>
internal sealed class SizingSearch
{
    private const double RelativeTie = 1e-9;

    /// <summary>How many sets of sizes are tried to the end.</summary>
    private const int SetsTried = 6;

    /// <summary>How many of a long list.</summary>
    private const int SetsOfLong = 2;

    /// <summary>With at most so many runs the best two sets are taken to the end.</summary>
    private const int RunsForTwo = 12;

    /// <summary>With more runs than this the list is long, as the remarks say.</summary>
    private const int LongList = 120;

    /// <summary>How many trials of a long list exchanges may take.</summary>
    private const int MostExchanges = 200;

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

    private bool IsLong => _runs.Length > LongList;

    /// <summary>The sizes; null when none were found.</summary>
    public int[]? Find()
    {
        if (_problem.Kept.Index().Any(r => r.Item >= 0 && !_problem.MeetsFuse(r.Index, r.Item)))
            return null;
        if (Chosen(_problem.Offered, _problem.Choice(run => _problem.Smallest(run, _problem.Offered))) is not { } free)
            return null;
        if (_problem.Offered.Length <= _problem.MostSizes)
            return IsLong
                ? Exchanged(free, _problem.Offered)
                : ExchangedForMany(Exchanged(free, _problem.Offered), _problem.Offered);
        var tried = new List<(int[] Sizes, int[] Set)>();
        foreach (int[] set in Sets(free))
            if (Chosen(set, RoundedUp(free, set)) is { } start)
                tried.Add((IsLong ? start : Exchanged(start, set), set));
        // The runner-up may still overtake; of more runs that takes too long.
        int[]? best = null;
        for (int left = _runs.Length <= RunsForTwo ? 2 : 1; left > 0 && tried.Count > 0; left--)
        {
            int first = 0;
            for (int i = 1; i < tried.Count; i++)
                if (IsBetter(tried[i].Sizes, tried[first].Sizes))
                    first = i;
            (int[] sizes, int[] set) = tried[first];
            int[] polished = IsLong ? Exchanged(sizes, set) : ExchangedForMany(sizes, set);
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
            .SelectMany(g =>
                g.OrderBy(s => _problem.CopperOf(RoundedUp(free, s))).Take(IsLong ? SetsOfLong : SetsTried)
            );
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
    // holds. Of long lists the first where it holds.
    private int[]? Chosen(IReadOnlyList<int> set, int[] enlarged)
    {
        if (_runs.Any(r => _problem.Smallest(r, set) < 0))
            return null;
        int[] largest = _problem.Choice(_ => set[^1]);
        bool isLargestEnough = _trial.Holds(largest);
        if (IsLong)
            return isLargestEnough ? Thinned(Enlarge(enlarged, set) ? enlarged : largest, set) : null;
        int[]? best = isLargestEnough ? Thinned(largest, set) : null;
        if (Enlarge(enlarged, set) && Thinned(enlarged, set) is var thin && (best is null || IsBetter(thin, best)))
            best = thin;
        return best;
    }

    private bool Enlarge(int[] sizes, IReadOnlyList<int> set)
    {
        if (IsLong)
            EnlargeMany(sizes, set);
        while (!_trial.Carries(sizes))
            if (!EnlargeOne(sizes, set, _trial.Excess))
                return false;
        // Shorts last: what clears with small wires may not with larger ones before it, which let more through.
        while (ShortOhms(sizes) > 0)
            if (!EnlargeOne(sizes, set, ShortOhms))
                return false;
        return _trial.Carries(sizes);
    }

    // By the slope of the drops, as many runs at once as would take a tenth of the excess off.
    private void EnlargeMany(int[] sizes, IReadOnlyList<int> set)
    {
        while (!_trial.Carries(sizes))
        {
            (double excess, double[] perOhm) = _trial.ExcessPerOhm(sizes);
            var gains = (
                from run in _runs
                let larger = Next(sizes[run], set)
                where larger is not null
                let gain = perOhm[run] * (_problem.Ohms[run][sizes[run]] - _problem.Ohms[run][larger.Value])
                where gain > 0
                orderby gain / (_problem.Copper[run][larger.Value] - _problem.Copper[run][sizes[run]]) descending
                select (Run: run, Size: larger.Value, Gain: gain)
            ).ToArray();
            if (gains.Length == 0)
                return;
            double left = excess;
            foreach ((int run, int size, double gain) in gains.TakeWhile(_ => left > 0.9 * excess))
            {
                sizes[run] = size;
                left -= gain;
            }
        }
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
    // after they did not. A size that does not hold, or surely will not, is not tried again, nor a smaller one.
    private int[] Thinned(int[] sizes, IReadOnlyList<int> set, int kept = -1) =>
        Thinned(sizes, set, kept, _trial.Carries) is var thin && ShortOhms(thin) <= 0
            ? thin
            : Thinned(sizes, set, kept, _trial.Holds);

    private int[] Thinned(int[] sizes, IReadOnlyList<int> set, int kept, Func<int[], bool> holds)
    {
        int[] least = _problem.Choice(run => run == kept ? sizes[run] : 0);
        ImmutableSortedSet<Change> open = [.. _runs.SelectMany((_, place) => Changes(place, sizes))];
        for (int count = 1; !open.IsEmpty;)
        {
            (int[] trial, ImmutableSortedSet<Change> left) = ([.. sizes], open);
            for (int i = 0; i < count && !left.IsEmpty;)
            {
                (int place, int size) = (left[0].Place, left[0].Size);
                left = left.Except(Changes(place, trial));
                if (_trial.SurelyFailsWith(sizes, _runs[place], size))
                    Refuse(place, size);
                else
                {
                    trial[_runs[place]] = size;
                    i++;
                }

                left = left.Union(Changes(place, trial));
            }

            if (open.IsEmpty)
                break;
            if (holds(trial))
                (sizes, open, count) = (trial, left, 2 * count);
            else if (count > 1)
                count /= 2;
            else
                Refuse(open[0].Place, open[0].Size);
        }

        return sizes;

        void Refuse(int place, int size)
        {
            open = open.Except(Changes(place, sizes));
            least[_runs[place]] = size + 1;
            open = open.Union(Changes(place, sizes));
        }

        IEnumerable<Change> Changes(int place, int[] of) =>
            Smaller(place, of, set).Where(c => c.Saved > 0 && c.Size >= least[_runs[place]]);
    }

    // One run smaller, alone or with another one larger, as long as that needs less copper.
    private int[] Exchanged(int[] sizes, IReadOnlyList<int> set)
    {
        long last = IsLong ? _trial.Tried + MostExchanges : long.MaxValue;
        while (
            Exchanges(sizes, set)
                .TakeWhile(_ => _trial.Tried < last)
                .FirstOrDefault(c => IsBetter(c, sizes) && _trial.Holds(c)) is
            { } better
        )
            sizes = better;
        return sizes;
    }

    // One run smaller, alone or with another one larger: the most copper saved first.
    private IEnumerable<int[]> Exchanges(int[] sizes, IReadOnlyList<int> set)
    {
        Change[] smaller = [.. _runs.SelectMany((_, place) => Smaller(place, sizes, set))],
            larger = [.. _runs.SelectMany((_, place) => Larger(place, sizes, set)).OrderByDescending(c => c.Saved)];
        double tie = RelativeTie * _problem.CopperOf(sizes);
        var queue = new PriorityQueue<(int Smaller, int Larger), (double Costs, int Smaller, int Larger)>();
        for (int i = 0; i < smaller.Length; i++)
            queue.Enqueue((i, -1), (-smaller[i].Saved, i, -1));
        while (queue.TryDequeue(out (int Smaller, int Larger) pair, out _))
        {
            Change less = smaller[pair.Smaller];
            int[] changed = With(sizes, _runs[less.Place], less.Size);
            if (pair.Larger < 0)
                yield return changed;
            else if (larger[pair.Larger] is var more && more.Place != less.Place)
                yield return With(changed, _runs[more.Place], more.Size);
            int then = pair.Larger + 1;
            if (then < larger.Length && less.Saved + larger[then].Saved is var saved && saved >= -tie)
                queue.Enqueue((pair.Smaller, then), (-saved, pair.Smaller, then));
        }
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

    private IEnumerable<Change> Smaller(int place, int[] sizes, IReadOnlyList<int> set) =>
        set.Take(Place(sizes[_runs[place]], set))
            .TakeLast(Reach)
            .Reverse()
            .Where(s => s >= _problem.Smallest(_runs[place], set))
            .Select(s => ChangeOf(place, sizes, s));

    private IEnumerable<Change> Larger(int place, int[] sizes, IReadOnlyList<int> set) =>
        set.Skip(Place(sizes[_runs[place]], set) + 1).Take(Reach).Select(s => ChangeOf(place, sizes, s));

    private Change ChangeOf(int place, int[] sizes, int size) =>
        new(_problem.Copper[_runs[place]][sizes[_runs[place]]] - _problem.Copper[_runs[place]][size], place, size);

    private static int? Next(int size, IReadOnlyList<int> set) =>
        Place(size, set) is var place && place + 1 < set.Count ? set[place + 1] : null;

    private static int Place(int size, IReadOnlyList<int> set)
    {
        int place = 0;
        while (set[place] < size)
            place++;
        return place;
    }

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

    // One run of another size, by its place in the order of names; what becomes larger saves less than nothing.
    private readonly record struct Change(double Saved, int Place, int Size) : IComparable<Change>
    {
        public int CompareTo(Change other) =>
            (-Saved, Place, -Size).CompareTo((-other.Saved, other.Place, -other.Size));
    }
}
