using Microsoft.Testing.Platform.Builder;
using Microsoft.Testing.Platform.Extensions.TestHost;
using Microsoft.Testing.Platform.Services;

namespace Lighting.Calc.Tests.Mutation;

/// <summary>Ends a process of tests that is asked for a second session, so that tables and other static state are built
/// with the mutant in them.</summary>
/// <remarks>
/// The mutation tool keeps its processes for all mutants: a static initialiser would run before its mutant is switched
/// on, or leave a mutant's table to the next one. A process that is gone it replaces, and asks the new one the same.
/// The network has next to no static state and many mutants: there the processes are kept.
/// </remarks>
internal sealed class OneSessionAProcess : ITestSessionLifetimeHandler
{
    private static int s_sessions;

    public string Uid => nameof(OneSessionAProcess);

    public string Version => "1";

    public string DisplayName => "One session a process";

    public string Description => "Gives each mutant a process of its own.";

    /// <summary>Called by the generated start of the test program.</summary>
    public static void AddExtensions(ITestApplicationBuilder builder, string[] _) =>
        builder.TestHost.AddTestSessionLifetimeHandler(_ => new OneSessionAProcess());

    // Not while the tool looks which test reaches which mutant: that it does test by test, with no mutant switched on.
    public Task<bool> IsEnabledAsync() =>
        Task.FromResult(
            Environment.GetEnvironmentVariable("STRYKER_MUTANT_FILE") is not null
                && Environment.GetEnvironmentVariable("STRYKER_COVERAGE_FILE") is null
                && Environment.GetEnvironmentVariable("MutatedFolder") != "Network"
        );

    public Task OnTestSessionStartingAsync(ITestSessionContext testSessionContext)
    {
        if (Interlocked.Increment(ref s_sessions) > 1)
            Environment.Exit(0);
        return Task.CompletedTask;
    }

    public Task OnTestSessionFinishingAsync(ITestSessionContext testSessionContext) => Task.CompletedTask;
}
