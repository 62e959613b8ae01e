namespace Lighting.Calc.Tests.Published;

/// <summary>The overload rule against printed factors, for fuses of other fusing factors than a vehicle's.</summary>
public class OverloadRuleTests
{
    // Semi-enclosed fuses open at twice their rating: factor 0.725. gG fuses from 16 A on at 1.6 times: 0.9.
    [Theory]
    [InlineData(2, 0.725, 0.0005)]
    [Against("overload rule", "The IEE Wiring Regulations, chapter 36, semi-enclosed fuses", CheckKind.Arithmetic)]
    public void A_semi_enclosed_fuse_takes_0_725_of_the_wires_rating(double factor, double printed, double rounding) =>
        Publication.Meets(printed, OverloadRule.LargestFuse(1, factor), rounding);

    [Fact]
    [Against("overload rule", "engineers' forum on gG fuses, 0.9 of the wire's rating", CheckKind.Arithmetic)]
    public void A_fuse_that_opens_at_1_6_times_takes_0_9_of_the_wires_rating() =>
        Publication.Meets(0.9, OverloadRule.LargestFuse(1, 1.6), 0.05);
}
