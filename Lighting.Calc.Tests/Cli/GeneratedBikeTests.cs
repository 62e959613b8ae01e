using Lighting.Calc.Benchmarks;

namespace Lighting.Calc.Tests.Cli;

/// <summary>The bikes that the benchmark project invents.</summary>
public class GeneratedBikeTests
{
    [Fact]
    public void Generated_bikes_are_valid_network_bikes_of_about_40_points()
    {
        var generator = new BikeGenerator(seed: 7);
        var verdicts = new HashSet<BikeVerdict>();
        for (int i = 1; i <= 60; i++)
        {
            ListResult<BikeLists> lists = BikeLists.Read(Source(generator, i));
            Assert.Empty(lists.Faults);
            Assert.Empty(lists.Cautions);
            BikeReport report = BikeCheck.Evaluate(
                lists.Value.Bike,
                cancellationToken: TestContext.Current.CancellationToken
            );
            Assert.InRange(report.Network.Points.Length, 34, 46);
            Assert.Equal(SettingsOf(lists.Value), report.Settings.Length);
            Assert.DoesNotContain(report.Findings, f => f.Message.Contains("lit when", StringComparison.Ordinal));
            verdicts.Add(report.Verdict);
        }

        Assert.Equal(2, verdicts.Count);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bikes()
    {
        BikeGenerator one = new(3),
            other = new(3),
            third = new(4);
        Assert.Equal(one.Lists(1), other.Lists(1));
        Assert.NotEqual(one.Lists(2), third.Lists(2));
    }

    private static int SettingsOf(BikeLists lists) => lists.Bike.Lamps.Any(l => l.Lamp == "horn") ? 216 : 108;

    private static ListSource Source(BikeGenerator generator, int number) =>
        generator.Lists(number).Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text));
}
