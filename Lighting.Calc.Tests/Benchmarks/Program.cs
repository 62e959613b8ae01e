// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- --filter '*' --join
using BenchmarkDotNet.Running;

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
