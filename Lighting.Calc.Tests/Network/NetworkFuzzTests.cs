using System.Globalization;

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
    [InlineData(35532, FuzzKind.Extreme)]
    [InlineData(138541, FuzzKind.Extreme)]
    [InlineData(2815, FuzzKind.Middle)]
    [InlineData(34280, FuzzKind.Middle)]
    [InlineData(50914, FuzzKind.Middle)]
    public void A_network_that_once_failed_is_solved(int seed, FuzzKind kind) =>
        Assert.Equal("", new NetworkFuzz(seed, kind).Problem());

    // As many as a run of all tests can take; LIGHTING_CALC_NETWORKS says how many otherwise.
    [Theory]
    [Trait("time", "long")]
    [InlineData(FuzzKind.Plain)]
    [InlineData(FuzzKind.Middle)]
    [InlineData(FuzzKind.Extreme)]
    public void A_hundred_thousand_random_networks_are_solved_alike_in_either_order(FuzzKind kind) =>
        Check(
            kind,
            1000,
            int.Parse(
                Environment.GetEnvironmentVariable("LIGHTING_CALC_NETWORKS") ?? "100000",
                CultureInfo.InvariantCulture
            ) / 3
        );

    [Fact]
    public void A_refused_point_says_which_test_it_failed()
    {
        var found = new SolveDiagnostics(SolveStages.Newton, 12, 3, 2e-9, 5e-8, Holdable: false)
        {
            AllowedAmperes = 1e-9,
            HasSourceVoltage = true,
        };
        Assert.False(found.IsAccepted);
        Assert.Equal(
            "2E-09 A are left over at 'dip feed' (limit 1E-09 A), the power differs by 5E-08 of it (limit 1E-09), the "
                + "operating point is not stable; 12 iterations, tried Newton.",
            found.Refusal("'dip feed'")
        );
        SolveDiagnostics other = new(SolveStages.Newton, 1, 0, 0, 0, Holdable: true) { HasSourceVoltage = false };
        Assert.False(other.IsAccepted);
        Assert.StartsWith("the source has not its voltage;", other.Refusal(""), StringComparison.Ordinal);
        Assert.True((other with { HasSourceVoltage = true }).IsAccepted);
    }

    private static void Check(FuzzKind kind, int first, int count)
    {
        string[] problems =
        [
            .. Enumerable
                .Range(first, count)
                .AsParallel()
                .AsOrdered()
                .Select(seed => (seed, Problem: new NetworkFuzz(seed, kind).Problem()))
                .Where(p => p.Problem.Length > 0)
                .Take(5)
                .Select(p => $"{p.seed}: {p.Problem}"),
        ];
        Assert.Empty(problems);
    }
}
