using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Deals branches to fuses: the smallest largest fuse, then fewest wires that are rated below their fuse, then
/// most ways in use, then the smallest sum of ratings.</summary>
/// <remarks>Every way of grouping is covered: the best of a set of branches is that of one group with its first branch
/// and the best of the rest.</remarks>
internal sealed class FuseDealer
{
    /// <summary>With more branches than this the smallest are joined first.</summary>
    public const int MostBranches = 13;

    private readonly ImmutableArray<DealtBranch> _branches;
    private readonly ImmutableArray<double> _ratings;
    private readonly double _usable;
    private readonly double _factor;
    private readonly bool _apartDipAndMain;
    private readonly double[] _rating;
    private readonly bool[] _isTooLarge;

    /// <param name="branches">The branches, at most <see cref="MostBranches"/>.</param>
    /// <param name="ratings">The standard ratings, smallest first.</param>
    /// <param name="usable">Share of a rating that may flow continuously, temperature factor included.</param>
    /// <param name="factor">The temperature factor, for the peak.</param>
    /// <param name="apartDipAndMain">Whether dipped and main beam are kept apart.</param>
    public FuseDealer(
        ImmutableArray<DealtBranch> branches,
        ImmutableArray<double> ratings,
        double usable,
        double factor,
        bool apartDipAndMain
    )
    {
        (_branches, _ratings, _usable, _factor, _apartDipAndMain) = (
            branches,
            ratings,
            usable,
            factor,
            apartDipAndMain
        );
        _rating = [.. Enumerable.Range(0, 1 << branches.Length).Select(RatingOf)];
        _isTooLarge = [.. _rating.Select((r, set) => Members(set).Any(b => b.WireAmperes < r - 1e-9))];
    }

    /// <summary>Number of branches.</summary>
    public int Branches => _branches.Length;

    /// <summary>The best with at most some ways; null where there is none.</summary>
    public FuseDeal? Best(int ways)
    {
        int all = _rating.Length - 1;
        // For each number of ways and set of branches: the last group, and what it comes to.
        var found = new (Score Score, int Group)?[ways + 1, all + 1];
        for (int w = 0; w <= ways; w++)
            found[w, 0] = (default, 0);
        for (int w = 1; w <= ways; w++)
            for (int set = 1; set <= all; set++)
                for (int group = set; group > 0; group = (group - 1) & set)
                {
                    // Its first branch is in the group: the others of the group are free.
                    if ((group & set & -set) == 0 || double.IsNaN(_rating[group]))
                        continue;
                    if (found[w - 1, set ^ group] is not { } rest)
                        continue;
                    Score score = rest.Score.With(_rating[group], _isTooLarge[group]);
                    if (found[w, set] is not { } known || score.CompareTo(known.Score) < 0)
                        found[w, set] = (score, group);
                }

        if (found[ways, all] is null)
            return null;
        var groups = new List<int>();
        for (int set = all, w = ways; set > 0; w--)
        {
            groups.Add(found[w, set]!.Value.Group);
            set ^= groups[^1];
        }

        return new FuseDeal(
            [
                .. groups.Select(g =>
                    Enumerable.Range(0, _branches.Length).Where(b => (g >> b & 1) != 0).ToImmutableArray()
                ),
            ],
            [.. groups.Select(g => _rating[g])],
            groups.Count(g => _isTooLarge[g])
        );
    }

    // Not a number where the branches may not share a fuse, or none carries them.
    private double RatingOf(int set)
    {
        DealtBranch[] members = [.. Members(set)];
        if (members.Length == 0)
            return 0;
        ApartLoads kinds = members.Aggregate(ApartLoads.None, (k, b) => k | b.Kinds);
        bool clash =
            kinds.HasFlag(ApartLoads.Headlamp | ApartLoads.Ignition) && members.Length > 1
            || _apartDipAndMain && kinds.HasFlag(ApartLoads.Dip | ApartLoads.Main) && members.Length > 1
            || members.Any(b => b.Source != members[0].Source);
        double continuous = Largest(members, b => b.Continuous),
            peak = Largest(members, b => b.Peak);
        return clash
            ? double.NaN
            : _ratings.FirstOrDefault(r => continuous <= r * _usable + 1e-9 && peak <= r * _factor + 1e-9, double.NaN);
    }

    private static double Largest(DealtBranch[] members, Func<DealtBranch, ImmutableArray<double>> of) =>
        Enumerable.Range(0, of(members[0]).Length).Select(s => members.Sum(b => of(b)[s])).DefaultIfEmpty().Max();

    private IEnumerable<DealtBranch> Members(int set) => _branches.Where((_, b) => (set >> b & 1) != 0);

    private readonly record struct Score(double Largest, int TooSmallWires, int Ways, double Sum) : IComparable<Score>
    {
        public Score With(double rating, bool isTooLarge) =>
            new(Math.Max(Largest, rating), TooSmallWires + (isTooLarge ? 1 : 0), Ways + 1, Sum + rating);

        public int CompareTo(Score other) =>
            (Largest, TooSmallWires, -Ways, Sum).CompareTo(
                (other.Largest, other.TooSmallWires, -other.Ways, other.Sum)
            );
    }
}
