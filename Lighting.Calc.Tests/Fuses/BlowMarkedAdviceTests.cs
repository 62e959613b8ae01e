using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>What is advised in place of a glass fuse that is marked with the current at which it blows: again by its
/// marking, so that who buys what is written gets a fuse that suits.</summary>
public class BlowMarkedAdviceTests
{
    // 4.92 A continuous need 6.6 A continuous, 13.1 A marked; of those that are made (tables/older-fuses.csv) 15 A. 28
    // strands of 0.30 mm are rated 17.5 A as ordinary cable: 35 A marked.
    [Fact]
    public void Ratings_are_those_that_are_made_and_stand_on_the_fuse()
    {
        FuseSuitability judged = Judge(8);
        Assert.Equal(FuseVerdict.Overloaded, judged.Verdict);
        Assert.Equal(15, judged.Advice.Smallest!.Value.Amperes, 1e-9);
        Assert.Equal(35, judged.Advice.Largest!.Value.Amperes, 1e-9);
        Assert.Contains("fit 15 A to 35 A (fuses as marked", judged.Advice.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_advised_suits()
    {
        FuseAdvice advice = Judge(8).Advice;
        foreach (ElectricCurrent rating in new[] { advice.Smallest!.Value, advice.Largest!.Value })
            Assert.Equal(FuseVerdict.Suits, Judge(rating.Amperes).Verdict);
    }

    [Fact]
    public void The_verdicts_remedy_names_the_marking()
    {
        Bike bike = Marked(8);
        BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal("Fit 15 A to 35 A, as marked.", report.Causes[0].Remedy);
    }

    private static FuseSuitability Judge(double marked)
    {
        Bike bike = Marked(marked);
        return FuseCheck
            .Evaluate(
                bike,
                BikeSolution.Solve(bike, new CheckOptions(), TestContext.Current.CancellationToken).Points,
                cancellationToken: TestContext.Current.CancellationToken
            )
            .Single();
    }

    private static Bike Marked(double rating)
    {
        Bike bike = BikeLists.Read("Lighting.Calc.Tests/ForeignBikes/fenland-six").Value.Bike;
        WireSize wire = bike.Runs.Single(r => r.Name == "main feed").Wire;
        return bike with
        {
            Runs = [.. bike.Runs.Select(r => r with { Wire = wire })],
            Fuses = [bike.Fuses[0] with { Rating = ElectricCurrent.FromAmperes(rating) }],
        };
    }
}
