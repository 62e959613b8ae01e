namespace Lighting.Calc.Tests.Network;

/// <summary>Random networks solved with their parts in either order: the same operating point, which keeps the laws of
/// circuits.</summary>
public class NetworkFuzzTests
{
    [Theory]
    [InlineData(FuzzKind.Plain, 300)]
    [InlineData(FuzzKind.Middle, 300)]
    public void A_sample_of_random_networks_is_solved_alike_in_either_order(FuzzKind kind, int count) =>
        Check(kind, 0, count);

    // Found among 180,000. Open are the seeds 4964 and 11805 (Extreme), 34280 and 50914 (Middle): an all-zero point at
    // nano-amperes that passes, outcomes that depend on the order, and a point refused at a residual below its limit.
    [Theory]
    [InlineData(2646, FuzzKind.Extreme)]
    public void A_network_that_once_failed_is_solved(int seed, FuzzKind kind) =>
        Assert.Equal("", new NetworkFuzz(seed, kind).Problem());

    [Theory(Explicit = true)]
    [Trait("run", "full")]
    [InlineData(FuzzKind.Plain)]
    [InlineData(FuzzKind.Middle)]
    public void A_hundred_thousand_random_networks_are_solved_alike_in_either_order(FuzzKind kind) =>
        Check(kind, 1000, 50_000);

    private static void Check(FuzzKind kind, int first, int count)
    {
        string[] problems =
        [
            .. Enumerable
                .Range(first, count)
                .Select(seed => (seed, Problem: new NetworkFuzz(seed, kind).Problem()))
                .Where(p => p.Problem.Length > 0)
                .Take(5)
                .Select(p => $"{p.seed}: {p.Problem}"),
        ];
        Assert.Empty(problems);
    }
}
