// 100,000 bikes drawn within the spreads of the 12-volt twin, each solved in all its electrical states.
using BenchmarkDotNet.Attributes;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Benchmarks;

[MemoryDiagnoser]
public class Tolerance
{
    private Bike bike = null!;

    [Params(1, 2)]
    public int Threads { get; set; }

    [GlobalSetup]
    public void Setup() =>
        bike = BikeLists.Read(CliProcess.Bike("valley-twin")).TryGetValue(out BikeLists? lists)
            ? lists.Bike
            : throw new InvalidOperationException("The demo bike is not read.");

    [Benchmark]
    public ToleranceReport HundredThousandTwins() =>
        ToleranceCheck.Evaluate(bike, new ToleranceOptions { Samples = 100_000, Threads = Threads });
}
