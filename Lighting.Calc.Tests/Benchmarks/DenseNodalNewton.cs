// The smallest dense formulation: node volts alone, LU of MathNet, plain Newton. Harder to beat than the tests'
// reference.
using Lighting.Calc.Tests.Network;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Lighting.Calc.Benchmarks;

internal static class DenseNodalNewton
{
    public static double[] Solve(TestNetwork network)
    {
        var at = new double[network.Loads.Count];
        Array.Fill(at, network.Emf);
        var matrix = new DenseMatrix(network.Nodes);
        var right = new DenseVector(network.Nodes);
        for (int iteration = 0; iteration < 100; iteration++)
        {
            matrix.Clear();
            right.Clear();
            foreach (TestConductor c in network.Conductors)
                Stamp(c.A, c.B, 1 / c.Ohms, 0);
            for (int i = 0; i < at.Length; i++)
            {
                TestLoad load = network.Loads[i];
                LawPoint p = load.Law.At(at[i]);
                Stamp(load.Feed, load.Return, p.SlopeSiemens, p.CurrentAmperes - p.SlopeSiemens * at[i]);
            }

            Stamp(network.Plus, network.Minus, 1 / network.SourceOhms, -network.Emf / network.SourceOhms);
            matrix[network.Minus, network.Minus] += 1;
            Vector<double> volts = matrix.LU().Solve(right);
            double change = 0;
            for (int i = 0; i < at.Length; i++)
            {
                double across = volts[network.Loads[i].Feed] - volts[network.Loads[i].Return];
                change = Math.Max(change, Math.Abs(across - at[i]));
                at[i] = across;
            }

            if (change <= 1e-11)
                return [.. volts];
        }

        throw new InvalidOperationException("Not solved.");

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
}
