
namespace Lighting.Calc;

/// <summary>Linear conditions that every good choice within some open sizes meets, whatever the loads' laws.</summary>
/// <remarks>
/// In a good choice every lit lamp has between the volts of the allowed drop and the source's, so its current lies between
/// two known figures. With the least of them drawn everywhere, the drop of a lamp's way is a lower bound of its drop;
/// the bound is linear in the runs' resistances, and needs neither monotone loads nor a tree. The volts, and with them the
/// currents, are then narrowed by the bounds themselves.
/// </remarks>
internal sealed class DropBounds
{
    /// <summary>Kept free in every condition for rounding, so that no good choice is cut off.</summary>
    private const double SlackVolts = 1e-6;
    private const int Rounds = 3;

    private readonly SizingProblem _problem;
    private readonly SideGraph[] _live;
    private readonly SideGraph[] _earth;
    private readonly int[] _feed;
    private readonly int[] _back;

    public DropBounds(SizingProblem problem)
    {
        _problem = problem;
        int nodes = problem.Network.Points.Length;
        int live = problem.Network.NodeOf(problem.Bike.LivePoint), earth = problem.Network.NodeOf(problem.Bike.EarthPoint);
        Bounded = [.. problem.States.Where(s => !s.IsShorted)];
        _live = [.. Bounded.Select(s => new SideGraph(s, nodes, live))];
        _earth = [.. Bounded.Select(s => new SideGraph(s, nodes, earth))];
        _feed = [.. problem.Network.Loads.Select(l => problem.Network.Circuit.LoadFeed[l])];
        _back = [.. problem.Network.Loads.Select(l => problem.Network.Circuit.LoadReturn[l])];
        LoopRuns = [.. _live.Concat(_earth).SelectMany(g => g.LoopRuns).Distinct().Order()];
    }

    public SizingState[] Bounded { get; }

    /// <summary>Runs that are part of a loop in some state; the bounds sharpen as their sizes are settled.</summary>
    public int[] LoopRuns { get; }

    /// <summary>The conditions for sizes between <paramref name="low"/> and <paramref name="high"/>.</summary>
    /// <param name="low">Thinnest size still open, by run.</param>
    /// <param name="high">Thickest size still open, by run.</param>
    /// <param name="currents">Takes the least current of each run over all states.</param>
    public List<DropRow> Rows(int[] low, int[] high, double[] currents)
    {
        var rows = new List<DropRow>();
        for (int s = 0; s < Bounded.Length; s++)
            AddRows(rows, s, low, high, currents);
        return Reduce(rows, low);
    }

    private void AddRows(List<DropRow> rows, int s, int[] low, int[] high, double[] currents)
    {
        SizingState state = Bounded[s];
        int lamps = state.Roles.Length, nodes = _problem.Network.Points.Length;
        double supply = _problem.SupplyVolts, battery = _problem.Bike.BatteryResistance.Ohms;
        double most = Enumerable.Range(0, lamps).Where(i => state.Roles[i] != LoadRole.Dark).Sum(i => Highest(i, 0, supply));
        double least = Math.Max(0, supply * (1 - _problem.Allowed) - (_problem.Options.CountBatteryDrop ? 0 : battery * most));
        double[] lowVolts = [.. Enumerable.Repeat(least, lamps)], highVolts = [.. Enumerable.Repeat(supply, lamps)];
        (double, double) Ohms(HarnessEdge e) => e.Run < 0
            ? (e.FixedOhms, e.FixedOhms)
            : (e.FixedOhms + _problem.Ohms[e.Run][low[e.Run]], e.FixedOhms + _problem.Ohms[e.Run][high[e.Run]]);
        for (int round = 1; ; round++)
        {
            double[] loose = Loose(state, supply, least);
            double[] liveLeast = new double[nodes], earthLeast = new double[nodes], liveMost = new double[nodes], earthMost = new double[nodes];
            for (int i = 0; i < lamps; i++)
            {
                bool driven = state.Roles[i] == LoadRole.Driven;
                double leastAmperes = driven ? Lowest(i, lowVolts[i], highVolts[i]) : -loose[i], mostAmperes = driven ? Highest(i, lowVolts[i], highVolts[i]) : loose[i];
                foreach (int node in new[] { _feed[i], _back[i] })
                {
                    (_live[s].Contains(node) ? liveLeast : earthLeast)[node] += leastAmperes;
                    (_live[s].Contains(node) ? liveMost : earthMost)[node] += mostAmperes;
                }
            }

            double[] liveBehind = _live[s].Behind(liveLeast), earthBehind = _earth[s].Behind(earthLeast);
            double[] liveBehindMost = _live[s].Behind(liveMost), earthBehindMost = _earth[s].Behind(earthMost);
            double batteryLeast = battery * Math.Max(0, liveBehind[_problem.Network.NodeOf(_problem.Bike.LivePoint)]), batteryMost = battery * liveBehindMost[_problem.Network.NodeOf(_problem.Bike.LivePoint)];
            for (int i = 0; i < lamps; i++)
            {
                if (state.Roles[i] != LoadRole.Driven)
                    continue;
                double[]? through = round == Rounds ? new double[low.Length] : null;
                double drop = _live[s].Drop(_feed[i], liveLeast, liveBehind, Ohms, lowest: true, through) + _earth[s].Drop(_back[i], earthLeast, earthBehind, Ohms, lowest: true, through);
                if (through is not null)
                {
                    double limit = supply * _problem.Allowed - drop - (_problem.Options.CountBatteryDrop ? batteryLeast : 0) + SlackVolts;
                    int[] runs = [.. Enumerable.Range(0, low.Length).Where(r => through[r] > 0)];
                    rows.Add(new DropRow(runs, [.. runs.Select(r => through[r])], limit));
                    continue;
                }

                double dropMost = _live[s].Drop(_feed[i], liveMost, liveBehindMost, Ohms, lowest: false, null) + _earth[s].Drop(_back[i], earthMost, earthBehindMost, Ohms, lowest: false, null);
                highVolts[i] = Math.Min(highVolts[i], Math.Max(least, supply - drop - batteryLeast + SlackVolts));
                lowVolts[i] = Math.Min(highVolts[i], Math.Max(lowVolts[i], supply - dropMost - batteryMost - SlackVolts));
            }

            if (round < Rounds)
                continue;
            _live[s].BridgeCurrents(liveBehind, currents);
            _earth[s].BridgeCurrents(earthBehind, currents);
            return;
        }
    }

    // Loads that are not simply between the two sides: only that their current is no more than this, either way.
    private double[] Loose(SizingState state, double supply, double least)
    {
        bool strong = state.Roles.Contains(LoadRole.Strong);
        double[] own = [.. state.Roles.Select((r, i) => r is LoadRole.Weak or LoadRole.Strong ? Highest(i, 0, strong ? supply : supply - least) : 0)];
        double[] bounded = new double[own.Length];
        for (int i = 0; i < own.Length; i++)
        {
            // What flows into a floating part by one load leaves it by others.
            double others = new[] { _feed[i], _back[i] }.Select(n => state.Part[n]).Where(p => state.Floats(p, _problem.Network))
                .Select(p => Enumerable.Range(0, own.Length).Where(j => j != i && (state.Part[_feed[j]] == p || state.Part[_back[j]] == p)).Sum(j => own[j]))
                .DefaultIfEmpty(double.PositiveInfinity).Min();
            bounded[i] = Math.Min(own[i], others);
        }

        return bounded;
    }

    // A driver's current rises to its minimum volts and falls beyond; all other loads' rises throughout.
    private double Lowest(int lamp, double low, double high) => Math.Min(_problem.Amperes(lamp, low), _problem.Amperes(lamp, high));

    private double Highest(int lamp, double low, double high)
    {
        double most = Math.Max(_problem.Amperes(lamp, low), _problem.Amperes(lamp, high));
        LampSpecification lampSpecification = _problem.Bike.Lamps[lamp].Specification;
        return lampSpecification.Type == LampType.Led && lampSpecification.MinimumVoltage!.Value.Volts is var peak && peak > low && peak < high
            ? Math.Max(most, _problem.Amperes(lamp, peak))
            : most;
    }

    private List<DropRow> Reduce(List<DropRow> rows, int[] low)
    {
        var kept = new List<DropRow>();
        foreach (DropRow row in rows.OrderBy(r => r.Limit))
            if (row.Limit < row.Runs.Select((r, k) => row.Coefficients[k] * _problem.Ohms[r][low[r]]).Sum() && !kept.Exists(row.CoveredBy))
                kept.Add(row);
        return kept;
    }
}
