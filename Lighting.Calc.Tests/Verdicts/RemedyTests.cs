using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.Rendering;

namespace Lighting.Calc.Tests.Verdicts;

/// <summary>Every cause of a verdict says what remedies it.</summary>
public class RemedyTests
{
    public static TheoryData<string> Bikes => [.. PageBikes.Names];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void Each_cause_has_a_remedy_or_shares_that_of_its_fuse(string name)
    {
        using var folder = new TemporaryFolder();
        Assert.True(BikeLists.Read(PageBikes.PathOf(name, folder)).TryGetValue(out BikeLists? lists));
        BikeReport report = BikeCheck.Evaluate(
            lists.Bike,
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.All(report.Causes, c => Assert.True(c.Remedy is not null || c.Findings.IsEmpty, c.Text));
    }

    // A Zener of 60 W that has to take what 20 A leave.
    [Fact]
    public void A_regulator_and_a_battery_that_are_overloaded_have_theirs()
    {
        BikeReport report = BikeCheck.Evaluate(
            BikeLists
                .Read(
                    ListSource
                        .Empty.With(
                            "bike.csv",
                            "item,value\nbattery capacity,10 Ah\nregulator,zener 14 V\nregulator resistance,0.3 ohm\n"
                                + "regulator rating,60 W\n"
                        )
                        .With("lamps.csv", "circuit,lamp,type,volts,watts\nhead,headlamp,filament,12,45\n")
                        .With("fuses.csv", "fuse,from,to,rating\nmain,,,15 A\n")
                        .With("charging.csv", "rpm,current\n1000,2\n5000,20\n")
                )
                .Value.Bike,
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.Contains(report.Causes, c => c.Findings.Any(f => f.Kind == FindingKind.RegulatorOverloaded));
        Assert.Contains(report.Causes, c => c.Findings.Any(f => f.Kind == FindingKind.BatteryOvervoltage));
        Assert.All(report.Causes, c => Assert.NotNull(c.Remedy));
    }
}
