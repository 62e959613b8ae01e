using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What each fuse of a bike feeds over some settings: found once, then asked by every judgement.</summary>
/// <param name="Graph">The bike as a graph.</param>
/// <param name="States">The settings that differ in what is fed.</param>
/// <param name="Scopes">One for each fuse, in the order of the list.</param>
internal sealed record DownstreamScopes(
    DownstreamGraph Graph,
    ImmutableArray<FeedState> States,
    ImmutableArray<FuseScope> Scopes
)
{
    public static DownstreamScopes Of(Bike bike, IEnumerable<Setting> settings, CancellationToken cancellationToken) =>
        Of(bike, SettingGroups.Of(bike, [.. settings]), cancellationToken);

    public static DownstreamScopes Of(Bike bike, SettingGroups groups, CancellationToken cancellationToken)
    {
        var graph = new DownstreamGraph(bike, groups.Graph);
        ImmutableArray<FeedState> states = DownstreamGraph.States(groups);
        return new DownstreamScopes(
            graph,
            states,
            [.. Enumerable.Range(0, bike.Fuses.Length).Select(i => FuseScope.Of(graph, i, states, cancellationToken))]
        );
    }
}
