// The independent answer: modified nodal analysis with every branch current an unknown, dense, plain Newton.
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Lighting.Calc.Tests.Network;

/// <remarks>
/// Unknowns: node volts, then the currents of conductors, loads and source. Equations: Kirchhoff at every node but the
/// minus, which is set to 0 V; Ohm for each conductor; the law of each load; the source. Shares nothing with the
/// solver but the laws for one load at one voltage.
/// Source: C.-W. Ho, A. Ruehli, P. Brennan, "The modified nodal approach to network analysis", 1975.
/// </remarks>
internal static class DenseNewton
{
    /// <summary>Node volts, from full source volts at every load.</summary>
    public static double[] Solve(TestNetwork network)
    {
        int nodes = network.Nodes;
        int conductors = network.Conductors.Count;
        int loads = network.Loads.Count;
        int size = nodes + conductors + loads + 1;
        var matrix = new DenseMatrix(size);
        var right = new DenseVector(size);
        var volts = new double[loads];
        for (int i = 0; i < loads; i++)
            volts[i] = network.Loads[i].Law.Reversed ? -network.Emf : network.Emf;

        for (int iteration = 0; iteration < 100; iteration++)
        {
            Stamp(network, volts, matrix, right);
            Vector<double> answer = matrix.LU().Solve(right);
            double change = 0;
            for (int i = 0; i < loads; i++)
            {
                double moved = answer[network.Loads[i].Feed] - answer[network.Loads[i].Return];
                change = Math.Max(change, Math.Abs(moved - volts[i]));
                volts[i] = moved;
            }

            if (change <= 1e-11)
                return [.. answer.Take(nodes)];
        }

        throw new InvalidOperationException("The reference does not converge.");
    }

    private static void Stamp(TestNetwork network, double[] volts, DenseMatrix matrix, DenseVector right)
    {
        matrix.Clear();
        right.Clear();
        int row = network.Nodes;
        foreach (TestConductor c in network.Conductors)
            Branch(c.A, c.B, 1, c.Ohms, 0);
        for (int i = 0; i < network.Loads.Count; i++)
        {
            TestLoad load = network.Loads[i];
            int sign = load.Law.Reversed ? -1 : 1;
            LawPoint at = load.Law.At(sign * volts[i]);
            Branch(load.Feed, load.Return, -at.SlopeSiemens, 1, sign * at.CurrentAmperes - at.SlopeSiemens * volts[i]);
        }

        // The source's current counts from plus to minus within it, as for all branches: V+ − V− − R·I = E.
        Branch(network.Plus, network.Minus, 1, network.SourceOhms, network.Emf);
        for (int k = 0; k < matrix.ColumnCount; k++)
            matrix[network.Minus, k] = 0;
        matrix[network.Minus, network.Minus] = 1;
        right[network.Minus] = 0;

        // Conductor and source: V − R·I = E; load: −s·V + 1·I = I₀ − s·V₀.
        void Branch(int a, int b, double ofVolts, double ofAmperes, double equals)
        {
            matrix[a, row]++;
            matrix[b, row]--;
            matrix[row, a] += ofVolts;
            matrix[row, b] -= ofVolts;
            matrix[row, row] += ofVolts == 1 ? -ofAmperes : ofAmperes;
            right[row] = equals;
            row++;
        }
    }
}
