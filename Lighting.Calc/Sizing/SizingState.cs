
namespace Lighting.Calc;

/// <summary>One distinct state of the contacts: what joins what, and how each load hangs in it.</summary>
internal sealed class SizingState
{
    private SizingState(Setting setting, HarnessEdge[] edges, int[] part, LoadRole[] roles)
    {
        Setting = setting;
        Edges = edges;
        Part = part;
        Roles = roles;
    }

    /// <summary>The first setting of this state.</summary>
    public Setting Setting { get; }

    /// <summary>Runs, fuses and closed contacts.</summary>
    public HarnessEdge[] Edges { get; }

    /// <summary>For each node, which connected part it belongs to.</summary>
    public int[] Part { get; }

    public LoadRole[] Roles { get; }

    /// <summary>The battery's terminals are joined without a load between: nothing is bounded here, only solved.</summary>
    public bool IsShorted { get; private init; }

    public static SizingState Of(HarnessNetwork network, Setting setting)
    {
        Bike bike = network.Bike;
        HarnessEdge[] edges = [.. HarnessEdge.Of(network, setting)];
        int[] part = Parts(network.Points.Length, edges);
        int live = part[network.NodeOf(bike.LivePoint)], earth = part[network.NodeOf(bike.EarthPoint)];
        var roles = new LoadRole[bike.Lamps.Length];
        // Floating parts that loads join to one another behave as one clump: what flows in by one load leaves by the others.
        int[] clump = [.. Enumerable.Range(0, network.Points.Length)];
        for (int i = 0; i < roles.Length; i++)
        {
            (int feed, int back) = (part[network.Circuit.LoadFeed[network.Loads[i]]], part[network.Circuit.LoadReturn[network.Loads[i]]]);
            roles[i] = (feed, back) switch
            {
                _ when feed == live && back == earth => LoadRole.Driven,
                _ when feed == earth && back == live => LoadRole.Strong,
                _ when feed == back => feed == live || feed == earth ? LoadRole.Weak : LoadRole.Dark,
                _ => LoadRole.Clump,
            };
            if (feed != live && feed != earth && back != live && back != earth)
                Join(clump, feed, back);
        }

        for (int i = 0; i < roles.Length; i++)
            if (roles[i] == LoadRole.Clump)
                roles[i] = RoleInClump(i);
        return new SizingState(setting, edges, part, roles) { IsShorted = live == earth };

        LoadRole RoleInClump(int load)
        {
            int own = ClumpOf(load);
            int lives = 0, earths = 0;
            for (int i = 0; i < bike.Lamps.Length; i++)
            {
                (int feed, int back) = (part[network.Circuit.LoadFeed[network.Loads[i]]], part[network.Circuit.LoadReturn[network.Loads[i]]]);
                if (ClumpOf(i) != own)
                    continue;
                lives += feed == live || back == live ? 1 : 0;
                earths += feed == earth || back == earth ? 1 : 0;
            }

            return lives + earths < 2 ? LoadRole.Dark : lives > 0 && earths > 0 ? LoadRole.Strong : LoadRole.Weak;
        }

        int ClumpOf(int load)
        {
            (int feed, int back) = (part[network.Circuit.LoadFeed[network.Loads[load]]], part[network.Circuit.LoadReturn[network.Loads[load]]]);
            bool feedFloats = feed != live && feed != earth, backFloats = back != live && back != earth;
            return feedFloats ? Find(clump, feed) : backFloats ? Find(clump, back) : -1;
        }
    }

    /// <summary>Whether a part is joined to neither terminal.</summary>
    public bool Floats(int part, HarnessNetwork network) => part != Part[network.NodeOf(Bike.BatteryPlus)] && part != Part[network.NodeOf(Bike.BatteryMinus)];

    /// <summary>What tells this state from others: the loads' roles and the closed contacts that could carry current.</summary>
    public string Signature(HarnessNetwork network)
    {
        var carrying = new HashSet<int> { Part[network.NodeOf(Bike.BatteryPlus)], Part[network.NodeOf(Bike.BatteryMinus)] };
        for (int i = 0; i < Roles.Length; i++)
            if (Roles[i] != LoadRole.Dark)
            {
                carrying.Add(Part[network.Circuit.LoadFeed[network.Loads[i]]]);
                carrying.Add(Part[network.Circuit.LoadReturn[network.Loads[i]]]);
            }

        return string.Join(',', Roles) + "|" + string.Join(',', Edges.Where(e => e.Contact >= 0 && carrying.Contains(Part[e.A])).Select(e => e.Contact));
    }

    private static int[] Parts(int nodes, HarnessEdge[] edges)
    {
        int[] parent = [.. Enumerable.Range(0, nodes)];
        foreach (HarnessEdge edge in edges)
            Join(parent, edge.A, edge.B);
        return [.. Enumerable.Range(0, nodes).Select(n => Find(parent, n))];
    }

    private static void Join(int[] parent, int a, int b) => parent[Find(parent, a)] = Find(parent, b);

    private static int Find(int[] parent, int node)
    {
        while (parent[node] != node)
            node = parent[node] = parent[parent[node]];
        return node;
    }
}
