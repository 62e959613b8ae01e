// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- --filter '*' --join
// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- bikes FOLDER [COUNT [SEED]]
using System.Globalization;
using BenchmarkDotNet.Running;
using Lighting.Calc.Benchmarks;

if (args is ["bikes", var folder, ..])
{
    int count = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 10_000;
    int seed = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 1;
    new BikeGenerator(seed).Write(folder, count);
    return;
}

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
