namespace Lighting.Calc.Tests.Network;

/// <summary>Random networks solved with their parts in either order: the same operating point, which keeps the laws of
/// circuits.</summary>
public class NetworkFuzzTests
{
    [Theory]
    [InlineData(FuzzKind.Plain, 300)]
    [InlineData(FuzzKind.Middle, 300)]
    [InlineData(FuzzKind.Extreme, 300)]
    public void A_sample_of_random_networks_is_solved_alike_in_either_order(FuzzKind kind, int count) =>
        Check(kind, 0, count);

    // An all-zero point at nanoamperes that passed, outcomes that depended on the order of parts, points refused at a
    // residual below the limit, an LED at the very start of its curve, a battery with nothing on it.
    [Theory]
    [InlineData(331, FuzzKind.Extreme)]
    [InlineData(1414, FuzzKind.Extreme)]
    [InlineData(1417, FuzzKind.Extreme)]
    [InlineData(2221, FuzzKind.Extreme)]
    [InlineData(2646, FuzzKind.Extreme)]
    [InlineData(4964, FuzzKind.Extreme)]
    [InlineData(5561, FuzzKind.Extreme)]
    [InlineData(11805, FuzzKind.Extreme)]
    [InlineData(2815, FuzzKind.Middle)]
    [InlineData(34280, FuzzKind.Middle)]
    [InlineData(50914, FuzzKind.Middle)]
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
