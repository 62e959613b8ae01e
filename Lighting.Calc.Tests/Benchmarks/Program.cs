// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- --filter '*' --join
// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- bikes FOLDER [COUNT [SEED [apart]]]
// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- large FOLDER [POINTS [SEED]]
// dotnet run -c Release --project Lighting.Calc.Tests/Benchmarks -- fuzz CORPUS FINDINGS [COUNT [SEED]]
// Lighting.Calc.Tests/Benchmarks/fuzz-with-coverage.sh SECONDS [LIST...] starts it as: fuzzed CORPUS LIST
using System.Globalization;
using BenchmarkDotNet.Running;
using Lighting.Calc.Benchmarks;
using SharpFuzz;

if (args is ["bikes", var folder, ..])
{
    int count = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 10_000;
    int seed = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 1;
    new BikeGenerator(seed, isApart: args is [_, _, _, _, "apart"]).Write(folder, count);
    return;
}

if (args is ["large", var bike, ..])
{
    int points = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 800;
    int seed = args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 1;
    LargeBike.Write(bike, points, seed);
    return;
}

if (args is ["fuzz", var corpus, var findings, ..])
{
    long inputs = args.Length > 3 ? long.Parse(args[3], CultureInfo.InvariantCulture) : 1_000_000;
    int start = args.Length > 4 ? int.Parse(args[4], CultureInfo.InvariantCulture) : 1;
    Environment.ExitCode = new ListFuzz(corpus).Run(inputs, start, findings) == 0 ? 0 : 1;
    return;
}

if (args is ["fuzzed", var beside, var list])
{
    var lists = new ListCorpus(beside);
    Fuzzer.Run(
        (Stream input) =>
        {
            using var text = new MemoryStream();
            input.CopyTo(text);
            ListTrial trial = ListTrial.Of(lists.Around(list, text.ToArray(), alone: false));
            if (trial.Wrong.Count > 0)
                throw new InvalidOperationException(string.Join('\n', trial.Wrong));
        }
    );
    return;
}

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
