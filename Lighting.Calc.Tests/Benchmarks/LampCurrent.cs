// Current and slope of a filament lamp: by the exponent near its voltage, by the heat balance far below it.
using BenchmarkDotNet.Attributes;

namespace Lighting.Calc.Benchmarks;

public class LampCurrent
{
    private const int Calls = 1000;

    [Benchmark(Baseline = true, OperationsPerInvoke = Calls)]
    public double NearItsVoltage() => Sum(10, 14);

    [Benchmark(OperationsPerInvoke = Calls)]
    public double FarBelowIt() => Sum(0.5, 8);

    private static double Sum(double from, double to)
    {
        double sum = 0;
        for (int i = 0; i < Calls; i++)
        {
            LawPoint point = FilamentLaw.At(from + (to - from) * i / Calls, 12, 1.75);
            sum += point.CurrentAmperes + point.SlopeSiemens;
        }

        return sum;
    }
}
