using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Deals the circuits of a bike without runs.</summary>
internal static class BulbListFusePlanner
{
    public static FusePlan Plan(Bike bike, FusePlanOptions options, CancellationToken cancellationToken)
    {
        if (BranchLoads.Of(bike with { Fuses = [] }, options, cancellationToken, out string problem) is not { } loads)
            return FusePlanner.Failed(problem);
        ImmutableArray<ImmutableArray<int>> circuits =
        [
            .. bike
                .Lamps.Index()
                .GroupBy(l =>
                    (
                        Circuit: l.Item.Circuit.ToUpperInvariant(),
                        Beam: options.ApartDipAndMain ? loads.Of(0, [l.Index]).Kinds : ApartLoads.None
                    )
                )
                .Select(g => g.Select(l => l.Index).ToImmutableArray()),
        ];
        if (circuits.Length > FuseDealer.MostBranches)
            return FusePlanner.Failed(
                $"{circuits.Length} circuits are more than are dealt ({FuseDealer.MostBranches}"
                    + $"); give lamps that share a fuse one circuit"
            );
        FuseDealer dealer = FusePlanner.Dealer(
            [.. circuits.Select(c => loads.Of(0, c))],
            options,
            bike
        );
        if (FusePlanner.Deals([dealer], options.Ways) is not [(var deal, _), ..])
            return FusePlanner.Failed(FusePlanner.TooFew(dealer, circuits.Length));
        ImmutableArray<FuseWay> ways =
        [
            .. deal.Groups.Select(
                (g, i) =>
                    Way(
                        bike,
                        options,
                        loads,
                        i,
                        [.. g.SelectMany(c => circuits[c]).Order()],
                        ElectricCurrent.FromAmperes(deal.Ratings[i])
                    )
            ),
        ];
        return new FusePlan { Ways = ways, Explanation = FusePlanner.Explain(ways) };
    }

    private static FuseWay Way(
        Bike bike,
        FusePlanOptions options,
        BranchLoads loads,
        int index,
        ImmutableArray<int> lamps,
        ElectricCurrent rating
    )
    {
        DealtBranch draws = loads.Of(0, lamps);
        return new FuseWay
        {
            Fuse = new Fuse { Name = $"way {index + 1}", Rating = rating },
            Colour = FusePlanner.ColourOf(rating),
            Circuits = loads.Circuits(lamps),
            Lamps = [.. lamps.Select(l => bike.Lamps[l].Lamp)],
            ContinuousCurrent = ElectricCurrent.FromAmperes(draws.Continuous.Max()),
            PeakCurrent = ElectricCurrent.FromAmperes(draws.Peak.Max()),
            SmallestWire = WireTable
                .Of(WireConstruction.MetricCable)
                .FirstOrDefault(w =>
                    w.CopperArea >= new WireSizingOptions().MinimumArea
                    && CurrentRating.Calculate(w, options.Check.Fuses.AirRoundWires(bike), 1, bike.Cable).Current
                        >= rating
                ),
        };
    }
}
