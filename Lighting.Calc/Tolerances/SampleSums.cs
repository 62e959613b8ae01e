using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lighting.Calc;

/// <summary>Sums over one block of samples: of parts, results, their squares and their products, about the listed bike's.</summary>
/// <remarks>Always eight lanes wide and added up in one order, whatever the machine's vectors, so that the sums are the same everywhere.</remarks>
internal sealed class SampleSums(int parts, int quantities, int verdicts)
{
    /// <summary>Samples taken together.</summary>
    public const int Chunk = 256;

    public double[] Part { get; } = new double[parts];

    public double[] PartSquared { get; } = new double[parts];

    public double[] Quantity { get; } = new double[quantities];

    public double[] QuantitySquared { get; } = new double[quantities];

    /// <summary>By quantity, then by part.</summary>
    public double[] Product { get; } = new double[quantities * parts];

    /// <summary>Samples in which each verdict is good.</summary>
    public int[] Good { get; } = new int[verdicts];

    /// <summary>Adds a chunk of deviations; places past the last sample hold zero.</summary>
    public void Add(ReadOnlySpan<double> partDeviations, ReadOnlySpan<double> quantityDeviations)
    {
        for (int p = 0; p < parts; p++)
        {
            ReadOnlySpan<double> part = partDeviations.Slice(p * Chunk, Chunk);
            Part[p] += Sum(part);
            PartSquared[p] += Dot(part, part);
        }

        for (int q = 0; q < quantities; q++)
        {
            ReadOnlySpan<double> quantity = quantityDeviations.Slice(q * Chunk, Chunk);
            Quantity[q] += Sum(quantity);
            QuantitySquared[q] += Dot(quantity, quantity);
            for (int p = 0; p < parts; p++)
                Product[q * parts + p] += Dot(quantity, partDeviations.Slice(p * Chunk, Chunk));
        }
    }

    public void Add(SampleSums other)
    {
        AddTo(Part, other.Part);
        AddTo(PartSquared, other.PartSquared);
        AddTo(Quantity, other.Quantity);
        AddTo(QuantitySquared, other.QuantitySquared);
        AddTo(Product, other.Product);
        for (int i = 0; i < Good.Length; i++)
            Good[i] += other.Good[i];
    }

    private static void AddTo(double[] sums, double[] others)
    {
        for (int i = 0; i < sums.Length; i++)
            sums[i] += others[i];
    }

    private static double Sum(ReadOnlySpan<double> values)
    {
        Vector512<double> sum = Vector512<double>.Zero;
        for (int i = 0; i < Chunk; i += Vector512<double>.Count)
            sum += Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(values), (nuint)i);
        return InOrder(sum);
    }

    private static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        Vector512<double> sum = Vector512<double>.Zero;
        for (int i = 0; i < Chunk; i += Vector512<double>.Count)
            sum += Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(left), (nuint)i) * Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(right), (nuint)i);
        return InOrder(sum);
    }

    private static double InOrder(Vector512<double> lanes)
    {
        double sum = 0;
        for (int i = 0; i < Vector512<double>.Count; i++)
            sum += lanes[i];
        return sum;
    }
}
