namespace Lighting.Calc;

/// <summary>Sizes for all runs together that hold every limit with little copper.</summary>
/// <remarks>
/// Two starts: the smallest sizes that strength and fuses allow, where, while a limit is exceeded, that run is made one
/// size larger that takes most off the excess for its copper; and the largest sizes. From each, exchanges as long as
/// they save copper: runs smaller, alone or with others larger. Every choice is judged by the solved network and the
/// fuses' own check; nothing shows that no other choice needs less.
/// </remarks>
internal sealed class SizingSearch
{
    private const double RelativeTie = 1e-9;

    /// <summary>By how many sizes an exchange changes a run at most.</summary>
    private const int Reach = 2;
    private readonly SizingProblem _problem;
    private readonly SizingTrial _trial;
    private readonly ShortCheck _shorts;
    private readonly int[] _runs;
    private readonly int _largest;
    private bool _shortsMatter;

    public SizingSearch(SizingProblem problem)
    {
        _problem = problem;
        _trial = new SizingTrial(problem);
        _shorts = new ShortCheck(problem);
        _largest = problem.Sizes.Length - 1;
        // By name, so that the order of the list does not decide between equals.
        _runs =
        [
            .. Enumerable
                .Range(0, problem.Bike.Runs.Length)
                .Where(HasLength)
                .OrderBy(i => problem.Bike.Runs[i].Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>The sizes; null when none were found.</summary>
    public int[]? Find()
    {
        if (_problem.Thinnest.Any(s => s > _largest))
            return null;
        // Wire of no length costs nothing and drops nothing; its rating alone counts.
        int[] sizes = [.. _problem.Thinnest.Select((s, i) => HasLength(i) ? s : _largest)],
            largest = [.. sizes.Select(_ => _largest)];
        _shortsMatter = _shorts.Failures(sizes).Any();
        int[]? best = Search([.. sizes], largest);
        // Larger wires elsewhere let more current through a small one: what clears with the smallest of all may not
        // with those chosen.
        if (best is not null && !_shortsMatter && _shorts.Failures(best).Any())
        {
            _shortsMatter = true;
            best = Search(sizes, largest);
        }

        if (best is not null)
            FitRunsWithoutLength(best);
        return best;
    }

    private int[]? Search(int[] sizes, int[] largest)
    {
        if (ShortOhms(largest) > 0)
            return null;
        int[][] starts = Enlarge(sizes, ShortOhms) && Enlarge(sizes, _trial.Excess) ? [sizes, largest] : [largest];
        return starts
            .Where(Holds)
            .Select(Exchange)
            .Aggregate((int[]?)null, (best, next) => best is null ? next : Better(best, [next]).FirstOrDefault(best));
    }

    private int[] Exchange(int[] sizes)
    {
        // Triples are many: they are tried where no pair is left, and by one size where each needs the fuses' check.
        while (
            (
                Pairs(sizes).FirstOrDefault(Holds)
                ?? Triples(sizes, _shortsMatter ? 1 : Reach).FirstOrDefault(Holds)
                ?? OneForMany(sizes)
            )
                is { } better
        )
            sizes = better;
        return sizes;
    }

    // Resistance of all dead shorts that are not cleared in time.
    private double ShortOhms(int[] sizes) =>
        _shortsMatter ? _shorts.Failures(sizes).Sum(f => f.Clearing.LoopResistance.Ohms) : 0;

    private bool Holds(int[] sizes)
    {
        _problem.Cancellation.ThrowIfCancellationRequested();
        return _trial.Holds(sizes) && (!_shortsMatter || !_shorts.Failures(sizes).Any());
    }

    private bool Enlarge(int[] sizes, Func<int[], double> excessOf)
    {
        for (double excess = excessOf(sizes); excess > 0; excess = excessOf(sizes))
        {
            _problem.Cancellation.ThrowIfCancellationRequested();
            int best = -1;
            double most = 0;
            foreach (int run in _runs.Where(r => sizes[r] < _largest))
            {
                int[] trial = With(sizes, run, sizes[run] + 1);
                double gain =
                    (excess - excessOf(trial)) / (_problem.Copper[run][trial[run]] - _problem.Copper[run][sizes[run]]);
                if (gain > most)
                    (best, most) = (run, gain);
            }

            if (best < 0)
                return false;
            sizes[best]++;
        }

        return true;
    }

    // One run smaller, alone or with another one larger.
    private IEnumerable<int[]> Pairs(int[] sizes) =>
        Better(sizes, Smaller(sizes, sizes, Reach).SelectMany(c => Larger(c, sizes, Reach).Prepend(c)));

    // Two runs smaller and one larger, or one smaller and two larger.
    private IEnumerable<int[]> Triples(int[] sizes, int reach) =>
        Better(
            sizes,
            Smaller(sizes, sizes, reach)
                .SelectMany(c => Larger(c, sizes, reach))
                .SelectMany(c => Smaller(c, sizes, reach).Concat(Larger(c, sizes, reach)))
        );

    // One run larger, and all others smaller as far as that allows.
    private int[]? OneForMany(int[] sizes) =>
        Better(sizes, Larger(sizes, sizes, Reach).Select(c => Thinned(c, _runs.First(r => c[r] > sizes[r]))))
            .FirstOrDefault();

    private int[] Thinned(int[] sizes, int kept)
    {
        while (
            Better(sizes, Smaller(sizes, sizes, 1)).FirstOrDefault(c => c[kept] == sizes[kept] && Holds(c))
                is { } smaller
        )
            sizes = smaller;
        return sizes;
    }

    // A choice with one run more changed from some sizes.
    private IEnumerable<int[]> Smaller(int[] choice, int[] sizes, int reach) =>
        _runs
            .Where(r => choice[r] == sizes[r])
            .SelectMany(r =>
                Enumerable
                    .Range(1, Math.Min(reach, sizes[r] - _problem.Thinnest[r]))
                    .Select(by => With(choice, r, sizes[r] - by))
            );

    private IEnumerable<int[]> Larger(int[] choice, int[] sizes, int reach) =>
        _runs
            .Where(r => choice[r] == sizes[r])
            .SelectMany(r =>
                Enumerable.Range(1, Math.Min(reach, _largest - sizes[r])).Select(by => With(choice, r, sizes[r] + by))
            );

    // Those that need less copper, or as much in a better order; least copper first.
    private IEnumerable<int[]> Better(int[] sizes, IEnumerable<int[]> choices)
    {
        double known = _problem.CopperOf(sizes);
        return choices
            .Select(c => (Choice: c, Copper: _problem.CopperOf(c)))
            .Where(c =>
                Math.Abs(c.Copper - known) <= known * RelativeTie
                    ? Order(c.Choice).CompareTo(Order(sizes)) < 0
                    : c.Copper < known
            )
            .OrderBy(c => c.Copper)
            .Select(c => c.Choice);
    }

    // Of equal copper fewer different sizes are better, then fewer changed runs.
    private (int Different, int Changed) Order(int[] sizes) =>
        (_runs.Select(r => sizes[r]).Distinct().Count(), _runs.Count(r => sizes[r] != _problem.Fitted[r]));

    // As fitted where that holds, or the smallest that does.
    private void FitRunsWithoutLength(int[] sizes)
    {
        foreach (int run in Enumerable.Range(0, sizes.Length).Except(_runs))
            sizes[run] = Enumerable
                .Range(0, _problem.Sizes.Length)
                .OrderBy(s => s != _problem.Fitted[run])
                .First(s => s >= _problem.Thinnest[run] && Holds(With(sizes, run, s)));
    }

    private bool HasLength(int run) => _problem.Bike.Runs[run].Length.Meters > 0;

    private static int[] With(int[] sizes, int run, int size)
    {
        int[] changed = [.. sizes];
        changed[run] = size;
        return changed;
    }
}
