using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Plans a fuse box: deals the circuits of a bike to fuses, behind a main fuse where one wire feeds them
/// all.</summary>
/// <remarks>
/// The feed is parted where it branches first after battery and switches; a branch with headlamp and ignition together,
/// or one too large for 4 mm² wire, is parted again where it branches next, and so is the largest branch where that
/// allows a smaller largest fuse. A fuse alone at its point is in line there. Each fuse: continuous load ≤ 75 % of the
/// rating (<see cref="FuseOptions"/>), peak ≤ rating, rating ≤ every wire behind it; the main fuse at least 1.6 times
/// the largest way, so that the way opens first (1 : 1.6 for fuses of one characteristic, tables/constants.csv). Of all
/// ways to deal them the one with the smallest largest fuse. New wires are sized, and wires of the bike that are rated
/// below their fuse made larger, by <see cref="HarnessSizing"/>, up to 4 mm² where that will do; wires whose kind of
/// cable is not stated are taken as ordinary cable. The bike with the plan is judged as in <see cref="BikeCheck"/>.
/// </remarks>
public static class FusePlanner
{
    private static readonly double s_selective = Constants.Of("fuse_selectivity");

    private static readonly ImmutableArray<double> s_ratings =
    [
        .. FuseTable.Of(FuseStyle.Blade).Select(f => f.Rating.Amperes),
    ];

    /// <summary>Plans the box.</summary>
    /// <param name="bike">The bike; its fuses are replaced. One without runs gets a plan without wires.</param>
    /// <param name="options">How many ways, and by what they are judged; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The plan, or why none was found.</returns>
    /// <exception cref="ArgumentException">The condition names what the bike does not have.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="NetworkNotSolvedException">The battery is shorted in a setting, or no solution was
    /// found.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static FusePlan Plan(
        Bike bike,
        FusePlanOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(bike);
        options ??= new FusePlanOptions();
        if (options.Ways < 1)
            throw new ArgumentOutOfRangeException(nameof(options), options.Ways, "Ways must be 1 or more.");
        if (!(options.BoxLead.Meters > 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.BoxLead,
                "Length to the box must be greater " + "than zero."
            );
        if (bike.Lighting == LightingSupply.Direct)
            return Failed("a lighting coil limits its own current: there is nothing to fuse");
        return bike.HasNetwork
            ? new HarnessFusePlanner(bike, options, cancellationToken).Plan()
            : BulbListFusePlanner.Plan(bike, options, cancellationToken);
    }

    internal static FusePlan Failed(string why) => new() { Explanation = why };

    /// <summary>The ratings of the ways and of the main fuse in words, such as <c>headlamp 10 A, rear lamp 5 A, behind
    /// a main fuse of 20 A</c>.</summary>
    internal static string Explain(IEnumerable<FuseWay> ways) =>
        string.Join(
            ", ",
            ways.OrderBy(w => w.IsMain)
                .Select(w =>
                    w.IsMain
                        ? $"behind a main fuse of " + $"{A(w.Fuse.Rating.Amperes)}"
                        : $"{Together(w.Circuits)} {A(w.Fuse.Rating.Amperes)}"
                )
        );

    internal static string A(double amperes) => string.Create(CultureInfo.InvariantCulture, $"{amperes:0.##} A");

    internal static string ColourOf(ElectricCurrent rating) =>
        FuseTable.Of(FuseStyle.Blade).First(f => f.Rating.Amperes.Equals(rating.Amperes)).Colour;

    /// <summary>Deals in the order in which they are tried, each with the number of the branches it is of: with as many
    /// ways as there may be first, then with fewer; or, where any number may be, the first whose wires are all large
    /// enough, then the others.</summary>
    internal static ImmutableArray<(FuseDeal Deal, int Of)> Deals(IReadOnlyList<FuseDealer> dealers, int? ways)
    {
        int branches = dealers.Max(d => d.Branches);
        // One way behind a main fuse would part nothing.
        int least = ways is null ? Math.Min(2, branches) : 1;
        (FuseDeal Deal, int Of)[] fewestFirst =
        [
            .. Enumerable
                .Range(least, Math.Max(0, Math.Min(ways ?? branches, branches) - least + 1))
                .Select(Best)
                .OfType<(FuseDeal, int)>(),
        ];
        return ways is not null
            ? [.. fewestFirst.Reverse()]
            : [.. fewestFirst.OrderBy(d => d.Deal.TooSmallWires)];

        (FuseDeal, int)? Best(int most) =>
            dealers
                .Select((d, i) => (Deal: d.Best(Math.Min(most, d.Branches)), Of: i))
                .Where(d => d.Deal is not null)
                .OrderBy(d => d.Deal!.Ratings.Max())
                .ThenBy(d => d.Deal!.TooSmallWires)
                .Select(d => ((FuseDeal, int)?)(d.Deal!, d.Of))
                .FirstOrDefault();
    }

    internal static string TooFew(FuseDealer dealer, int branches) =>
        Enumerable.Range(1, branches).FirstOrDefault(w => dealer.Best(w) is not null) is > 0 and var least
            ? $"at least {least} ways are needed: headlamp and ignition, and what is fed from different points, do not "
                + $"share a fuse"
            : $"no blade fuse carries the load of a branch that cannot be parted; the largest is {A(s_ratings[^1])}";

    internal static FuseDealer Dealer(ImmutableArray<DealtBranch> branches, FusePlanOptions options, Bike bike)
    {
        FuseOptions fuses = options.Check.Fuses;
        double factor = FuseTemperature.Factor(FuseStyle.Blade, fuses.AirRoundFuses(bike)).DecimalFractions;
        return new FuseDealer(
            branches,
            s_ratings,
            fuses.ContinuousLoadFactor.DecimalFractions * factor,
            factor,
            options.ApartDipAndMain
        );
    }

    internal static double? NextRating(double above) =>
        s_ratings.Where(r => r > above + 1e-9).Select(r => (double?)r).FirstOrDefault();

    internal static double? RatingFrom(double least) =>
        s_ratings.Where(r => r >= least - 1e-9).Select(r => (double?)r).FirstOrDefault();

    internal static double LeastMain(double way) => way * s_selective;

    private static string Together(ImmutableArray<string> circuits) =>
        circuits.Length == 1 ? circuits[0] : $"{string.Join(", ", circuits[..^1])} and {circuits[^1]}";
}
