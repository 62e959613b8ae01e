using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Examples;

/// <summary>What the manual says of the demo bikes is what the library finds.</summary>
public class ReadmeDemoBikeTests
{
    // The manual's lines are wrapped; white space does not count.
    private static readonly string s_readme = Regex.Replace(
        File.ReadAllText(Path.Combine(CliProcess.Root, "Lighting.Calc", "MANUAL.md")),
        @"\s+",
        " "
    );

    [Fact]
    public void The_twin()
    {
        FuseSuitability fuse = Fuse("valley-twin");
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Says(
            $"High beam draws {fuse.Steady.ContinuousCurrent.Amperes:0.0} A continuously. A fuse may carry 75 % of ",
            $"its rating continuously: {fuse.Steady.UsableCurrent.Amperes} A of 15 A."
        );
        Says($"with brake and indicators, it is {fuse.Steady.WorstCurrent.Amperes:0.0} A.");
        RunAmpacityCheck weakest = fuse.Protection.LimitingRun!;
        Says(
            $"are rated {fuse.Protection.WireCurrent!.Value.Amperes:0.0} A alone and ",
            $"{weakest.Rating.Current!.Value.Amperes:0.0} A two in a bundle"
        );
        Says($"As ordinary PVC cable they would be rated {weakest.IfOrdinary!.Alone!.Value.Amperes:0.0} A");
        Assert.All(
            fuse.Clearing,
            c => Assert.True(c.ProspectiveCurrent!.Value.Amperes > 100 && c.Opening!.Slowest!.Value.Seconds < 0.1)
        );
        Assert.Equal((10.0, 15.0), (fuse.Advice.Smallest!.Value.Amperes, fuse.Advice.Largest!.Value.Amperes));
    }

    [Fact]
    public void The_twin_with_uprated_lamps()
    {
        string root = Path.Combine(CliProcess.Root, "shared");
        BikeLists lists = BikeLists
            .Read(Path.Combine(root, "bikes", "valley-twin"))
            .Value.WithSwaps(Path.Combine(root, "uprated-lamps.csv"))
            .Value;
        FuseSuitability fuse = Assert.Single(
            Swap.Evaluate(lists.Bike, lists.Swaps, cancellationToken: TestContext.Current.CancellationToken).After.Fuses
        );
        Assert.Equal(FuseVerdict.Overloaded, fuse.Verdict);
        Says($"high beam draws {fuse.Steady.ContinuousCurrent.Amperes:0.0} A continuously, above the limit of ");
        Says($"of {fuse.Steady.UsableCurrent.Amperes} A: *overloaded.* 20 A is not the answer before eight wires");
        Assert.Equal(8, fuse.Advice.UpsizedRuns.Length);
        Says($"reduce the load to {Math.Floor(10 * fuse.Advice.MaximumContinuousLoad!.Value.Amperes) / 10} A");
    }

    [Fact]
    public void The_single()
    {
        FuseSuitability fuse = Fuse("chapel-single");
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Says(
            $"high beam draws {fuse.Steady.ContinuousCurrent.Amperes:0.0} A continuously, of ",
            $"{fuse.Steady.UsableCurrent.Amperes} A (75 % of 15 A)"
        );
        Says(
            $"High beam, stop lamp and horn together draw {fuse.Steady.WorstCurrent.Amperes:0.0} A at the peak, below ",
            $"the rating."
        );
        RunAmpacityCheck weakest = fuse.Protection.LimitingRun!;
        Assert.Equal(
            ("pilot wire", 2, "16 AWG stranded"),
            (weakest.Run.Name, weakest.Run.Bundle, weakest.Run.Wire.Name)
        );
        Says(
            $"is rated {weakest.Rating.Current!.Value.Amperes} A: nothing above ",
            $"{fuse.Advice.MaximumRatingForWire!.Value.Amperes} A may be fitted."
        );
        Assert.All(fuse.Clearing, c => Assert.Null(c.Clears));
    }

    [Fact]
    public void The_lightweight()
    {
        Bike bike = Bike("fell-lightweight");
        Assert.Equal(LightingSupply.Direct, bike.Lighting);
        Assert.Empty(bike.Fuses);
        Assert.Contains(
            BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).DirectLighting!.Losses,
            l => l.EquivalentResistor is not null
        );
    }

    private static void Says(params FormattableString[] sentence) =>
        Assert.Contains(
            string.Concat(sentence.Select(FormattableString.Invariant)),
            s_readme,
            StringComparison.Ordinal
        );

    private static FuseSuitability Fuse(string name) =>
        Assert.Single(BikeCheck.Evaluate(Bike(name), cancellationToken: TestContext.Current.CancellationToken).Fuses);

    private static Bike Bike(string name) =>
        BikeLists.Read(Path.Combine(CliProcess.Root, "shared", "bikes", name)).Value.Bike;
}
