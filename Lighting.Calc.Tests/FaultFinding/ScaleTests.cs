using FsCheck;
using FsCheck.Xunit;

namespace Lighting.Calc.Tests.FaultFinding;

public class ScaleTests
{
    [Property]
    public bool The_words_for_a_light_are_all_there_is(NormalFloat light, NormalFloat sigma) =>
        Math.Abs(
            Enum.GetValues<Brightness>()
                .Sum(b => LookScale.Probability(b, Math.Clamp(light.Get, -20, 20), Math.Min(5, Math.Abs(sigma.Get))))
                - 1
        ) < 1e-9;

    [Theory]
    [InlineData(0.01, Brightness.Dark)]
    [InlineData(0.3, Brightness.Dim)]
    [InlineData(1, Brightness.Normal)]
    [InlineData(2.5, Brightness.Bright)]
    public void A_light_is_called_by_the_likeliest_word(double light, Brightness word)
    {
        Assert.Equal(word, LookScale.Of(LookScale.Logarithm(light)));
        Assert.True(LookScale.Probability(word, LookScale.Logarithm(light), 0) > 0.5);
    }

    [Theory]
    [InlineData(-2.5, 0.0062097)]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.8413447)]
    [InlineData(1.965, 0.9752926)]
    public void The_table_of_the_normal_distribution_is_good_to_five_decimals(double z, double probability) =>
        Assert.Equal(probability, StandardNormal.Cumulative(z), 1e-5);
}
