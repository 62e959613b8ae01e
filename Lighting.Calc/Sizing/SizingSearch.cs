namespace Lighting.Calc;

/// <summary>Branch and bound over the sizes of all runs together.</summary>
/// <remarks>
/// A branch is a range of sizes for every run. It is cut off when the linear conditions that every good choice meets leave
/// nothing of it, or when no choice of it can need less copper than the best known. The first corner of it, every
/// run at its thinnest, needs the least copper of it: when the network solution shows that corner to be good the
/// branch is done; if not, it is divided. No choice counts as good that was not solved exactly, and none is cut off by anything
/// but a bound, so a search that ends has proven its best, also where thicker wire dims another lamp.
/// A. H. Land and A. G. Doig, "An automatic method of solving discrete programming problems", 1960.
/// </remarks>
internal sealed class SizingSearch
{
    /// <summary>What reckoning the bounds afresh costs, in branches.</summary>
    private const int BranchesPerRelaxation = 50;
    private const int FirstPriceSteps = 600;
    private const int PriceSteps = 120;
    private const double RelativeTie = 1e-9;
    private readonly SizingProblem _problem;
    private readonly SizingTrial _trial;
    private readonly ShortCheck _shorts;
    private readonly DropBounds _bounds;
    private readonly List<DropRow> _shortRows = [];
    private readonly List<int[]> _uncleared = [];
    private readonly CancellationToken _cancellation;
    private double _best = double.PositiveInfinity;
    private bool _shortsMatter = true;

    public SizingSearch(SizingProblem problem, CancellationToken cancellation)
    {
        _problem = problem;
        _cancellation = cancellation;
        _trial = new SizingTrial(problem);
        _shorts = new ShortCheck(problem);
        _bounds = new DropBounds(problem);
    }

    /// <summary>The best choice; null when none was found.</summary>
    public int[]? Best { get; private set; }

    public int Branches { get; private set; }

    /// <summary>How many trials were passed over because no operating point was found for them.</summary>
    public int Unsolved => _trial.Unsolved;

    /// <summary>Whether the search came to its end.</summary>
    public bool IsFinished { get; private set; }

    /// <summary>No good choice needs less, in mm²·m.</summary>
    public double LeastCopper { get; private set; }

    public void Run()
    {
        int[] low = [.. _problem.Thinnest], high = [.. low.Select(_ => _problem.Sizes.Length - 1)];
        if (low.Where((s, i) => s > high[i]).Any())
        {
            IsFinished = true;
            return;
        }

        _cancellation.ThrowIfCancellationRequested();
        SettleRunsWithoutLength(low, high);
        _shortsMatter = _shorts.Failures(low).Any();
        Offer(high);
        for (int round = 0; round < 2; round++)
            if (!Tighten(low, high))
            {
                IsFinished = true;
                return;
            }

        Relaxation relaxation = Relax(low, high, FirstPriceSteps);
        FirstGuess(relaxation, low, high);
        if (relaxation.Narrow([.. low], [.. high]))
            relaxation.FindPrices(low, high, _best, FirstPriceSteps);
        LeastCopper = relaxation.Bound(low, high);
        IsFinished = true;
        Branch(low, high, relaxation, null);
        // A trial without a solution was passed over, not shown to be bad.
        IsFinished &= _trial.Unsolved == 0;
        if (IsFinished)
            LeastCopper = _best;
        if (Best is not null)
            FitRunsWithoutLength(Best);
    }

    /// <summary>Whether a choice holds every limit, by the network solution and the fuses' own check.</summary>
    public bool IsGood(int[] sizes)
    {
        for (int i = 0; i < sizes.Length; i++)
            if (sizes[i] < _problem.Thinnest[i])
                return false;
        if (_trial.FirstFailure(sizes) is not null)
            return false;
        return !_shortsMatter || ShortsClear(sizes);
    }

    private bool ShortsClear(int[] sizes)
    {
        bool clear = true;
        foreach (UnclearedShort failure in _shorts.Failures(sizes))
        {
            clear = false;
            if (_shorts.Condition(failure, sizes) is { } row)
                _shortRows.Add(row);
            else
                _uncleared.Add([.. sizes]);
        }

        return clear;
    }

    // Wire of no length costs nothing and loses nothing. Its rating alone counts: thickest while the others are sought ...
    private void SettleRunsWithoutLength(int[] low, int[] high)
    {
        for (int i = 0; i < low.Length; i++)
            if (HasNoLength(i))
                low[i] = high[i];
    }

    // ... and then as fitted where that holds, or the thinnest that does.
    private void FitRunsWithoutLength(int[] sizes)
    {
        for (int i = 0; i < sizes.Length; i++)
        {
            if (!HasNoLength(i))
                continue;
            foreach (int size in Enumerable.Range(0, _problem.Sizes.Length).OrderBy(s => s != _problem.Fitted[i]))
            {
                sizes[i] = size;
                if (IsGood(sizes))
                    break;
            }
        }
    }

    private bool HasNoLength(int run) => _problem.Bike.Runs[run].Length.Meters == 0;

    private bool Tighten(int[] low, int[] high)
    {
        double[] currents = new double[low.Length];
        List<DropRow> rows = _bounds.Rows(low, high, currents);
        for (int i = 0; i < low.Length; i++)
            while (_problem.Ratings[i][low[i]] < currents[i] - 1e-6)
                if (++low[i] > high[i])
                    return false;
        return new Relaxation(_problem, rows).Narrow(low, high);
    }

    private Relaxation Relax(int[] low, int[] high, int steps)
    {
        List<DropRow> rows = _bounds.Rows(low, high, new double[low.Length]);
        rows.AddRange(_shortRows);
        var relaxation = new Relaxation(_problem, rows);
        if (relaxation.Narrow([.. low], [.. high]))
            relaxation.FindPrices(low, high, _best, steps);
        return relaxation;
    }

    private Relaxation Afresh(int[] low, int[] high)
    {
        Branches += BranchesPerRelaxation;
        _cancellation.ThrowIfCancellationRequested();
        return Relax(low, high, PriceSteps);
    }

    private void Branch(int[] low, int[] high, Relaxation relaxation, int[]? failed)
    {
        if (Branches >= _problem.Options.MostBranches)
        {
            IsFinished = false;
            return;
        }

        Branches++;
        if (Branches % 32 == 0)
            _cancellation.ThrowIfCancellationRequested();
        if (!Narrow(low, high, relaxation))
            return;
        if ((failed is null || !low.AsSpan().SequenceEqual(failed)) && relaxation.Meets(low))
        {
            int shorts = _shortRows.Count;
            if (Offer(low))
                return;
            for (int k = shorts; k < _shortRows.Count; k++)
                relaxation.Add(_shortRows[k]);
            failed = [.. low];
        }

        int run = Choose(low, high, relaxation);
        if (run < 0)
            return;
        bool settlesLoop = Array.IndexOf(_bounds.LoopRuns, run) >= 0;
        foreach (int size in Enumerable.Range(low[run], high[run] - low[run] + 1).OrderBy(s => relaxation.Priced[run][s]).ToArray())
        {
            int[] childLow = [.. low], childHigh = [.. high];
            childLow[run] = childHigh[run] = size;
            Branch(childLow, childHigh, settlesLoop ? Afresh(childLow, childHigh) : relaxation, failed);
            if (!IsFinished)
                return;
        }
    }

    private bool Narrow(int[] low, int[] high, Relaxation relaxation)
    {
        double most = _best * (1 + RelativeTie);
        for (bool again = true; again;)
        {
            if (!relaxation.Narrow(low, high) || _uncleared.Exists(bad => high.Zip(bad).All(p => p.First <= p.Second)))
                return false;
            double bound = relaxation.Bound(low, high), plain = 0;
            for (int i = 0; i < low.Length; i++)
                plain += _problem.Copper[i][low[i]];
            if (Math.Max(bound, plain) > most)
                return false;
            again = false;
            for (int i = 0; i < low.Length; i++)
            {
                double rest = bound - relaxation.Cheapest(i, low[i], high[i]), plainRest = plain - _problem.Copper[i][low[i]];
                while (low[i] < high[i] && (rest + relaxation.Priced[i][high[i]] > most || plainRest + _problem.Copper[i][high[i]] > most))
                {
                    high[i]--;
                    again = true;
                }

                while (low[i] < high[i] && rest + relaxation.Priced[i][low[i]] > most)
                {
                    low[i]++;
                    again = true;
                }
            }
        }

        return true;
    }

    // Runs in loops first, since settling them sharpens the bounds; then the one whose sizes differ most in copper.
    private int Choose(int[] low, int[] high, Relaxation relaxation)
    {
        foreach (int run in _bounds.LoopRuns)
            if (low[run] < high[run])
                return run;
        int best = -1;
        double most = -1;
        for (int i = 0; i < low.Length; i++)
        {
            double spread = _problem.Copper[i][high[i]] - _problem.Copper[i][low[i]];
            if (low[i] < high[i] && spread > most)
                (best, most) = (i, spread);
        }

        return best;
    }

    // Thickens from the cheapest priced sizes until good, then thins where it stays good.
    private void FirstGuess(Relaxation relaxation, int[] low, int[] high)
    {
        int[] sizes = [.. Enumerable.Range(0, low.Length).Select(i => Enumerable.Range(low[i], high[i] - low[i] + 1).MinBy(s => relaxation.Priced[i][s]))];
        while (!IsGood(sizes))
        {
            int run = Enumerable.Range(0, sizes.Length).Where(i => sizes[i] < high[i]).OrderBy(i => relaxation.Priced[i][sizes[i] + 1] - relaxation.Priced[i][sizes[i]]).FirstOrDefault(-1);
            if (run < 0)
                return;
            sizes[run]++;
        }

        for (bool again = true; again;)
        {
            again = false;
            foreach (int run in Enumerable.Range(0, sizes.Length).Where(i => sizes[i] > low[i]).OrderByDescending(i => _problem.Copper[i][sizes[i]] - _problem.Copper[i][sizes[i] - 1]).ToArray())
            {
                sizes[run]--;
                if (IsGood(sizes))
                    again = true;
                else
                    sizes[run]++;
            }
        }

        Offer(sizes);
    }

    // Takes a choice as the best when it is good and needs less copper, or as much and fewer different sizes, or fewer changed ones.
    private bool Offer(int[] sizes)
    {
        if (!IsGood(sizes))
            return false;
        double copper = _problem.CopperOf(sizes);
        bool tie = Best is not null && Math.Abs(copper - _best) <= _best * RelativeTie;
        if (Best is null || (tie ? TieOrder(sizes).CompareTo(TieOrder(Best)) < 0 : copper < _best))
        {
            Best = [.. sizes];
            _best = tie ? Math.Min(_best, copper) : copper;
        }

        return true;
    }

    private (int Different, int Changed) TieOrder(int[] sizes) =>
        (sizes.Where((_, i) => !HasNoLength(i)).Distinct().Count(), sizes.Where((s, i) => s != _problem.Fitted[i] && !HasNoLength(i)).Count());
}
