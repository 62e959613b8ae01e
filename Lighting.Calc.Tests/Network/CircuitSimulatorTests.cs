// Node volts against a general-purpose circuit simulator; run by compare-with-circuit-simulator.sh.
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Lighting.Calc.Tests.Network;

public sealed partial class CircuitSimulatorTests
{
    private const string Variable = "LIGHTING_CALC_SIMULATOR";

    [Theory]
    [InlineData(1, 0)]
    [InlineData(3, 1)]
    [InlineData(10, 2)]
    [InlineData(25, 3)]
    [InlineData(60, 8)]
    [InlineData(120, 12)]
    public void Node_volts_agree_with_a_circuit_simulator(int lamps, int loops)
    {
        string? program = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(
            string.IsNullOrEmpty(program),
            $"{Variable} names no simulator: use compare-with-circuit-simulator.sh."
        );
        for (int seed = 0; seed < 5; seed++)
            Compare(
                program!,
                RandomNetworks.Harness(new Random(seed + 100 * lamps), lamps, loops, Enum.GetValues<LampType>())
            );
        if (lamps == 25)
            Compare(program!, LargeHarness.Create(40));
    }

    private static void Compare(string program, TestNetwork network)
    {
        CircuitSolver solver = network.Solved();
        Dictionary<int, double> volts = Run(program, SimulatorNetlist.Write(network));
        double worst = 0;
        for (int v = 0; v < network.Nodes; v++)
        {
            if (v == network.Minus)
                continue;
            Assert.True(volts.ContainsKey(v), $"The simulator printed no volts for node {v}.");
            worst = Math.Max(worst, Math.Abs(volts[v] - solver.NodeVolts(v)));
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{network.Nodes} points, {network.Loads.Count} loads: greatest difference {worst:E1} V"
        );
        Assert.True(worst <= 1e-6, $"{network.Nodes} points, {network.Loads.Count} loads: difference {worst} V");
    }

    private static Dictionary<int, double> Run(string program, string netlist)
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, netlist);
            using Process process = Process.Start(
                new ProcessStartInfo(program, ["-b", file])
                {
                    RedirectStandardOutput = true,
                    RedirectStandardError = true,
                }
            )!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            var volts = new Dictionary<int, double>();
            foreach (Match match in NodeLine().Matches(output))
                volts[int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)] = double.Parse(
                    match.Groups[2].Value,
                    CultureInfo.InvariantCulture
                );
            Assert.True(volts.Count > 0, $"The simulator gave no volts.\n{output}\n{errors.Result}");
            return volts;
        }
        finally
        {
            File.Delete(file);
        }
    }

    [GeneratedRegex(@"^v\(n(\d+)\)\s*=\s*(\S+)", RegexOptions.Multiline)]
    private static partial Regex NodeLine();
}
