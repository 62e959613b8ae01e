using System.Collections.Immutable;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.WireSizing;

/// <summary>One distinct state of the contacts.</summary>
/// <param name="Setting">The first setting of this state.</param>
/// <param name="IsLimited">For each lamp whether wires and closed contacts alone join it to both terminals, the right way round: only then is its drop limited.</param>
internal sealed record SizingState(Setting Setting, ImmutableArray<bool> IsLimited)
{
    public static ImmutableArray<SizingState> Of(HarnessNetwork network, ImmutableArray<Setting> settings)
    {
        var contacts = new ClosedContacts(network, settings);
        return [.. Enumerable.Range(0, settings.Length).DistinctBy(contacts.StateOf).Select(s => new SizingState(settings[s], Limited(network, contacts.In(s))))];
    }

    private static ImmutableArray<bool> Limited(HarnessNetwork network, ImmutableArray<bool> closed)
    {
        Circuit circuit = network.Circuit;
        var joined = new DisjointSets(circuit.NodeCount);
        foreach (int conductor in (int[])[.. network.RunConductors, .. network.FuseConductors, .. network.ContactConductors.Where((_, i) => closed[i])])
            joined.Join(circuit.ConductorA[conductor], circuit.ConductorB[conductor]);
        int live = joined.RootOf(network.NodeOf(network.Bike.LivePoint)), earth = joined.RootOf(network.NodeOf(network.Bike.EarthPoint));
        return [.. network.Loads.Select(l => joined.RootOf(circuit.LoadFeed[l]) == live && joined.RootOf(circuit.LoadReturn[l]) == earth)];
    }
}
