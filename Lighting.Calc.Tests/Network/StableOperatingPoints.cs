// An independent search for every point that a small circuit of drivers can hold: all lit/dark states are tried.
using MathNet.Numerics.LinearAlgebra.Double;

namespace Lighting.Calc.Tests.Network;

/// <summary>A point that the circuit can hold.</summary>
/// <param name="Lit">Bit i set: load i is a driver at or above its minimum volts.</param>
/// <param name="Volts">By node.</param>
internal sealed record StableOperatingPoint(int Lit, double[] Volts);

/// <remarks>
/// For each set of lit drivers: lit ones follow P/V at any volts, dark ones are resistors Vmin²/P. The dense nodal
/// equations are solved from several starts, from above with the drivers' currents held for some rounds and by plain
/// Newton from random volts. A solution counts when each driver's volts fit its state and the eigenvalues of the
/// Jacobian are positive.
/// </remarks>
internal sealed class StableOperatingPoints(TestNetwork network, int seed)
{
    private readonly Random random = new(seed);

    public List<StableOperatingPoint> Find()
    {
        int[] drivers =
        [
            .. Enumerable.Range(0, network.Loads.Count).Where(i => network.Loads[i].Law.Kind == LampType.Led),
        ];
        var found = new List<StableOperatingPoint>();
        for (int set = 0; set < 1 << drivers.Length; set++)
        {
            int lit = 0;
            for (int d = 0; d < drivers.Length; d++)
                lit |= (set >> d & 1) << drivers[d];
            for (int start = 0; start < 6; start++)
            {
                double[]? volts = Settle(lit, start);
                if (volts is not null && Fits(lit, volts) && IsHoldable(lit, volts))
                {
                    found.Add(new StableOperatingPoint(lit, volts));
                    break;
                }
            }
        }

        return found;
    }

    private double[]? Settle(int lit, int start)
    {
        var volts = new double[network.Nodes];
        for (int v = 0; v < volts.Length; v++)
            volts[v] =
                network.Emf
                * (
                    start > 1 ? random.NextDouble()
                    : start == 0 && v != network.Minus ? 1
                    : 0
                );
        var at = new double[network.Loads.Count];
        for (int i = 0; i < at.Length; i++)
            at[i] = start == 0 ? network.Emf : volts[network.Loads[i].Feed] - volts[network.Loads[i].Return];
        int held = start == 0 ? 200 : 0;
        for (int iteration = 0; iteration < (start == 0 ? 250 : 40); iteration++)
        {
            double[]? next = Linearised(lit, at, hold: iteration < held);
            if (next is null)
                return null;
            double change = 0;
            for (int i = 0; i < at.Length; i++)
            {
                double across = next[network.Loads[i].Feed] - next[network.Loads[i].Return];
                change = Math.Max(change, Math.Abs(across - at[i]));
                at[i] = across;
            }

            if (change < 1e-10)
                return next;
            if (change < 1e-6)
                held = 0;
        }

        return null;
    }

    private double[]? Linearised(int lit, double[] at, bool hold)
    {
        var matrix = new DenseMatrix(network.Nodes);
        var right = new DenseVector(network.Nodes);
        foreach (TestConductor c in network.Conductors)
            Stamp(c.A, c.B, 1 / c.Ohms, 0);
        for (int i = 0; i < at.Length; i++)
        {
            TestLoad load = network.Loads[i];
            LawPoint p = Law(i, lit, at[i]);
            double slope = hold && p.SlopeSiemens < 0 ? 0 : p.SlopeSiemens;
            Stamp(load.Feed, load.Return, slope, p.CurrentAmperes - slope * at[i]);
        }

        matrix[network.Plus, network.Plus] += 1 / network.SourceOhms;
        right[network.Plus] += network.Emf / network.SourceOhms;
        matrix.ClearRow(network.Minus);
        matrix[network.Minus, network.Minus] = 1;
        right[network.Minus] = 0;
        double[] solution = [.. matrix.LU().Solve(right)];
        return solution.All(double.IsFinite) ? solution : null;

        void Stamp(int a, int b, double siemens, double amperes)
        {
            matrix[a, a] += siemens;
            matrix[b, b] += siemens;
            matrix[a, b] -= siemens;
            matrix[b, a] -= siemens;
            right[a] -= amperes;
            right[b] += amperes;
        }
    }

    private LawPoint Law(int i, int lit, double volts)
    {
        Load law = network.Loads[i].Law;
        if (law.Kind != LampType.Led || volts <= 0)
            return law.At(volts);
        double watts = law.Quantity * law.Strength;
        if ((lit >> i & 1) != 0)
            return new LawPoint(watts / volts, -watts / (volts * volts));
        double siemens = watts / (law.Volts * law.Volts);
        return new LawPoint(siemens * volts, siemens);
    }

    private bool Fits(int lit, double[] volts)
    {
        for (int i = 0; i < network.Loads.Count; i++)
        {
            (int feed, int ret, Load law) = network.Loads[i];
            if (law.Kind == LampType.Led && volts[feed] - volts[ret] >= law.Volts != ((lit >> i & 1) != 0))
                return false;
        }

        return true;
    }

    private bool IsHoldable(int lit, double[] volts)
    {
        var matrix = new DenseMatrix(network.Nodes);
        foreach (TestConductor c in network.Conductors)
            Stamp(c.A, c.B, 1 / c.Ohms);
        for (int i = 0; i < network.Loads.Count; i++)
        {
            (int feed, int ret, _) = network.Loads[i];
            Stamp(feed, ret, Law(i, lit, volts[feed] - volts[ret]).SlopeSiemens);
        }

        matrix[network.Plus, network.Plus] += 1 / network.SourceOhms;
        return matrix
            .RemoveRow(network.Minus)
            .RemoveColumn(network.Minus)
            .Evd(MathNet.Numerics.LinearAlgebra.Symmetricity.Symmetric)
            .EigenValues.All(e => e.Real > 0);

        void Stamp(int a, int b, double siemens)
        {
            matrix[a, a] += siemens;
            matrix[b, b] += siemens;
            matrix[a, b] -= siemens;
            matrix[b, a] -= siemens;
        }
    }
}
