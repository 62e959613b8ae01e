using System.Diagnostics;
using Lighting.Calc.Harness;
using Lighting.Calc.Lists;
using Lighting.Calc.Network;
using Lighting.Calc.WireSizing;

namespace Lighting.Calc.Tests.WireSizing;

public sealed class DemoBikeTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    public void Scratch(string name)
    {
        Bike bike = BikeLists.Read(Path.Combine(Folder(), name)).Value!.Bike;
        for (int i = 0; i < 3; i++)
        {
            var watch = Stopwatch.StartNew();
            WireSizingResult r = HarnessSizing.Of(new HarnessNetwork(bike), null, TestContext.Current.CancellationToken);
            output.WriteLine($"{watch.ElapsedMilliseconds} ms {r.Branches} branches {r.IsProven} {r.Explanation} least {r.LeastCopper}");
            if (i < 2)
                continue;
            foreach (RunSizing run in r.Runs)
                output.WriteLine($"{run.Run.Name}: {run.Run.Wire} -> {run.Chosen} {run.Limit} {run.WorstCurrent} {run.Rating.Current} | {run.Explanation}");
            foreach (LampSizing l in r.Lamps)
                output.WriteLine($"{l.Lamp.Lamp} {l.DropFitted} -> {l.DropChosen}");
            foreach (Finding f in r.Findings)
                output.WriteLine(f.ToString());
        }
    }

    private static string Folder()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !Directory.Exists(Path.Combine(at.FullName, "shared", "bikes")))
            at = at.Parent;
        return Path.Combine(at!.FullName, "shared", "bikes");
    }
}
