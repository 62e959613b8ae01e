namespace Lighting.Calc;

/// <summary>The least copper under linear conditions alone, bounded from below by pricing them.</summary>
/// <remarks>
/// Lagrangian relaxation: for prices λ ≥ 0 of the conditions, Σ_runs min_size (copper + Σ λ·c·R) − Σ λ·limit is no more than the
/// copper of any choice that meets them. The prices are sought by subgradient steps (M. Held, P. Wolfe, H. Crowder,
/// "Validation of subgradient optimization", 1974); whatever prices come out, the bound is valid.
/// </remarks>
internal sealed class Relaxation
{
    private const int StepsWithoutGain = 20;
    private readonly SizingProblem _problem;

    private readonly List<DropRow> _rows;

    public Relaxation(SizingProblem problem, List<DropRow> rows)
    {
        _problem = problem;
        _rows = rows;
        Prices = new double[rows.Count];
        Priced = problem.Copper;
    }

    /// <summary>Price of each condition, in mm²·m for its whole limit.</summary>
    private double[] Prices { get; }

    /// <summary>Copper and priced drop, by run and size.</summary>
    public double[][] Priced { get; private set; }

    /// <summary>The prices' own part of the bound.</summary>
    private double Credit { get; set; }

    /// <summary>No choice of these sizes that meets the conditions takes less copper, in mm²·m.</summary>
    public double Bound(int[] low, int[] high)
    {
        double sum = -Credit;
        for (int i = 0; i < low.Length; i++)
            sum += Cheapest(i, low[i], high[i]);
        return sum;
    }

    public double Cheapest(int run, int low, int high)
    {
        double[] priced = Priced[run];
        double best = priced[low];
        for (int s = low + 1; s <= high; s++)
            best = Math.Min(best, priced[s]);
        return best;
    }

    /// <summary>Raises the thin ends that no choice can have; false when no choice is left.</summary>
    public bool Narrow(int[] low, int[] high)
    {
        for (bool again = true; again;)
        {
            again = false;
            foreach (DropRow row in _rows)
            {
                double slack = row.Limit;
                for (int k = 0; k < row.Runs.Length; k++)
                    slack -= row.Coefficients[k] * _problem.Ohms[row.Runs[k]][high[row.Runs[k]]];
                if (slack < 0)
                    return false;
                for (int k = 0; k < row.Runs.Length; k++)
                {
                    int run = row.Runs[k];
                    double[] ohms = _problem.Ohms[run];
                    while (row.Coefficients[k] * (ohms[low[run]] - ohms[high[run]]) > slack)
                    {
                        low[run]++;
                        again = true;
                    }
                }
            }
        }

        return true;
    }

    public bool Meets(int[] sizes)
    {
        foreach (DropRow row in _rows)
        {
            double sum = 0;
            for (int k = 0; k < row.Runs.Length; k++)
                sum += row.Coefficients[k] * _problem.Ohms[row.Runs[k]][sizes[row.Runs[k]]];
            if (sum > row.Limit)
                return false;
        }

        return true;
    }

    /// <summary>Adds a condition found on the way; it narrows, but has no price.</summary>
    public void Add(DropRow row) => _rows.Add(row);

    /// <summary>Seeks prices that make <see cref="Bound"/> high for some open sizes, which must have been narrowed.</summary>
    /// <param name="low">Thinnest size still open, by run.</param>
    /// <param name="high">Thickest size still open, by run.</param>
    /// <param name="upper">Copper of a known choice; infinity where none is known.</param>
    /// <param name="steps">How many steps to take.</param>
    public void FindPrices(int[] low, int[] high, double upper, int steps)
    {
        double[] best = new double[Prices.Length], over = new double[Prices.Length];
        double bestBound = double.MinValue, pace = 1.5;
        int idle = 0;
        for (int step = 0; step < steps && Prices.Length > 0; step++)
        {
            TakePrices();
            double bound = Bound(low, high);
            if (bound > bestBound + 1e-9 * Math.Abs(bestBound))
            {
                bestBound = bound;
                Prices.CopyTo(best, 0);
                idle = 0;
            }
            else if (++idle == StepsWithoutGain)
            {
                pace /= 2;
                idle = 0;
            }

            double norm = Excess(low, high, over);
            double gap = (double.IsFinite(upper) ? upper : 1.1 * Math.Abs(bestBound) + 1) - bound;
            if (norm < 1e-18 || gap <= 0)
                break;
            for (int k = 0; k < Prices.Length; k++)
                Prices[k] = Math.Max(0, Prices[k] + pace * gap / norm * over[k]);
        }

        best.CopyTo(Prices, 0);
        TakePrices();
    }

    // By how much of its limit each condition is exceeded by the cheapest sizes at these prices; returns the sum of squares.
    private double Excess(int[] low, int[] high, double[] over)
    {
        int[] chosen = [.. Enumerable.Range(0, low.Length).Select(i => Enumerable.Range(low[i], high[i] - low[i] + 1).MinBy(s => Priced[i][s]))];
        double norm = 0;
        for (int k = 0; k < over.Length; k++)
        {
            over[k] = -_rows[k].Limit / Scale(k);
            for (int j = 0; j < _rows[k].Runs.Length; j++)
                over[k] += _rows[k].Coefficients[j] * _problem.Ohms[_rows[k].Runs[j]][chosen[_rows[k].Runs[j]]] / Scale(k);
            if (Prices[k] > 0 || over[k] > 0)
                norm += over[k] * over[k];
        }

        return norm;
    }

    private double Scale(int row) => Math.Max(1e-9, _rows[row].Limit);

    private void TakePrices()
    {
        Priced = [.. _problem.Copper.Select(c => c.ToArray())];
        Credit = 0;
        for (int k = 0; k < Prices.Length; k++)
        {
            if (Prices[k] == 0)
                continue;
            Credit += Prices[k] * _rows[k].Limit / Scale(k);
            for (int j = 0; j < _rows[k].Runs.Length; j++)
            {
                int run = _rows[k].Runs[j];
                double price = Prices[k] * _rows[k].Coefficients[j] / Scale(k);
                for (int s = 0; s < Priced[run].Length; s++)
                    Priced[run][s] += price * _problem.Ohms[run][s];
            }
        }
    }
}
