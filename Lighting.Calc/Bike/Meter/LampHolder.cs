using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A lamp holder: the lamps of one circuit on one return point share its earth.</summary>
/// <param name="Lamps">Indexes of the lamps.</param>
/// <param name="Return">The point it is joined to.</param>
internal sealed record LampHolder(ImmutableArray<int> Lamps, string Return)
{
    /// <summary>The holders of all lamps that give light and are alone on their two points.</summary>
    public static ImmutableArray<LampHolder> Of(Bike bike) =>
        [
            .. Enumerable
                .Range(0, bike.Lamps.Length)
                .Where(i => bike.Lamps[i].Quantity == 1 && bike.Lamps[i].Specification.GivesLight)
                .GroupBy(i => (bike.Lamps[i].Circuit, bike.Lamps[i].Return!), NameComparer.Instance)
                .Select(g => new LampHolder([.. g], g.Key.Item2)),
        ];

    private const string Prefix = "holder of ";
    private const string The = "the ";
    private const string And = " and ";

    /// <summary>The lamps of it, in words.</summary>
    public string LampsIn(Bike bike) => string.Join(And, Lamps.Select(l => bike.Lamps[l].Lamp));

    /// <summary>Its name in readings: <c>holder of the tail lamp</c>.</summary>
    public string NameIn(Bike bike) => Prefix + The + LampsIn(bike);

    /// <summary>The lamps that the name of a holder mentions; null where it is none.</summary>
    public static string[]? LampsOf(string name) =>
        name.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase)
            ?
            [
                .. name[Prefix.Length..]
                    .Split(And, StringSplitOptions.TrimEntries)
                    .Select(l => l.StartsWith(The, StringComparison.OrdinalIgnoreCase) ? l[The.Length..] : l),
            ]
            : null;

    public static int IndexOf(ImmutableArray<LampHolder> holders, int lamp)
    {
        for (int h = 0; h < holders.Length; h++)
            if (holders[h].Lamps.Contains(lamp))
                return h;
        return -1;
    }

    private sealed class NameComparer : IEqualityComparer<(string, string)>
    {
        public static readonly NameComparer Instance = new();

        public bool Equals((string, string) x, (string, string) y) =>
            Name.Equal(x.Item1, y.Item1) && Name.Equal(x.Item2, y.Item2);

        public int GetHashCode((string, string) pair) =>
            HashCode.Combine(Name.Comparer.GetHashCode(pair.Item1), Name.Comparer.GetHashCode(pair.Item2));
    }
}
