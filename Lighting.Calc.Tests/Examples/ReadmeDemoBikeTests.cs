using System.Globalization;
using System.Text.RegularExpressions;
using Lighting.Calc.Tests.Cli;

namespace Lighting.Calc.Tests.Examples;

/// <summary>What the manual says of the demo bikes is what the library finds.</summary>
public class ReadmeDemoBikeTests
{
    // The manual's lines are wrapped; white space does not count.
    private static readonly string s_readme = Regex.Replace(File.ReadAllText(Path.Combine(CliProcess.Root, "Lighting.Calc", "MANUAL.md")), @"\s+", " ");

    [Fact]
    public void The_twin()
    {
        FuseSuitability fuse = Fuse("valley-twin");
        Assert.Equal(FuseVerdict.Suits, fuse.Verdict);
        Says($"(high beam, brake, indicators) draws {fuse.Steady.WorstCurrent.Amperes:0.0} A;");
        Says($"{fuse.Steady.UsableCurrent.Amperes} A of 15 A. 10 A would carry only {10 * fuse.Steady.UsableCurrent.Amperes / 15:0.0} A");
        Says($"(1.5 mm², two in a bundle) carry {fuse.Protection.WireCurrent!.Value.Amperes:0.0} A");
        Assert.All(fuse.Clearing, c => Assert.True(c.ProspectiveCurrent!.Value.Amperes > 100 && c.Opening!.Slowest!.Value.Seconds < 0.1));
        Assert.Equal((15.0, 15.0), (fuse.Advice.Smallest!.Value.Amperes, fuse.Advice.Largest!.Value.Amperes));
    }

    [Fact]
    public void The_single()
    {
        FuseSuitability fuse = Fuse("chapel-single");
        Assert.Equal(FuseVerdict.Overloaded, fuse.Verdict);
        Says($"high beam, stop lamp and horn together draw {fuse.Steady.WorstCurrent.Amperes:0.0} A.");
        Says($"75 % of 15 A is {fuse.Steady.UsableCurrent.Amperes} A");
        UpsizedRun run = Assert.Single(fuse.Advice.UpsizedRuns);
        Assert.Equal(("pilot wire", 2, "16 AWG stranded", "14 AWG stranded"), (run.Run.Name, run.Run.Bundle, run.Run.Wire.Name, run.Wire!.Name));
        Says($"The load asks for {fuse.Advice.MinimumRatingForLoad!.Value.Amperes} A, but the pilot lamp's wire, 16 AWG and one of two in a bundle, carries {fuse.Protection.WireCurrent!.Value.Amperes} A.");
        Says($"nothing above {fuse.Advice.MaximumRatingForWire!.Value.Amperes} A may be fitted");
        Says($"the load falls to {fuse.Advice.MaximumContinuousLoad!.Value.Amperes} A, or that wire becomes 14 AWG first");
    }

    [Fact]
    public void The_lightweight()
    {
        Bike bike = Bike("fell-lightweight");
        Assert.Equal(LightingSupply.Direct, bike.Lighting);
        Assert.Empty(bike.Fuses);
        Assert.Contains(BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).DirectLighting!.Losses, l => l.EquivalentResistor is not null);
    }

    private static void Says(FormattableString sentence) => Assert.Contains(sentence.ToString(CultureInfo.InvariantCulture), s_readme, StringComparison.Ordinal);

    private static FuseSuitability Fuse(string name) => Assert.Single(BikeCheck.Evaluate(Bike(name), cancellationToken: TestContext.Current.CancellationToken).Fuses);

    private static Bike Bike(string name) => BikeLists.Read(Path.Combine(CliProcess.Root, "shared", "bikes", name)).Value.Bike;
}
