using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What each fuse of a bike feeds over some settings: found once, then asked by every judgement.</summary>
/// <param name="Graph">The bike as a graph.</param>
/// <param name="States">The settings that differ in what is fed.</param>
/// <param name="Scopes">One for each fuse, in the order of the list.</param>
internal sealed record FeedScopes(FeedGraph Graph, ImmutableArray<FeedState> States, ImmutableArray<FuseScope> Scopes)
{
    public static FeedScopes Of(Bike bike, IEnumerable<Setting> settings, CancellationToken cancellation) => Of(bike, SettingGroups.Of(bike, [.. settings]), cancellation);

    public static FeedScopes Of(Bike bike, SettingGroups groups, CancellationToken cancellation)
    {
        var graph = new FeedGraph(bike, groups.Graph);
        ImmutableArray<FeedState> states = FeedGraph.States(groups);
        return new FeedScopes(graph, states, [.. Enumerable.Range(0, bike.Fuses.Length).Select(i => FuseScope.Of(graph, i, states, cancellation))]);
    }
}
