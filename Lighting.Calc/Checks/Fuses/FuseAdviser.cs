using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Finds the standard ratings that satisfy everything, or what must change for one to.</summary>
internal static class FuseAdviser
{
    public static FuseAdvice Advise(Bike bike, FuseJudge judge, ContinuousLoad steady, FuseInrush? surge)
    {
        double[] standard = [.. FuseJudge.StandardRatings(judge.Fuse.Style, judge.IsMarkedWithBlowingCurrent)];
        double? needs = First(
            standard,
            r => judge.Carries(r, steady) && surge?.IsSurvivedBy(judge.Fuse.Style, r) != false
        );
        bool wiresKnown = !judge.DownstreamRuns.IsEmpty;
        double? protects = wiresKnown ? First(standard.Reverse(), judge.AllowsAll) : null;
        double? allows = wiresKnown ? First(standard.Reverse(), r => judge.AllowsAll(r) && judge.ClearsAll(r)) : null;
        bool conflict = wiresKnown && (needs is null || allows is null || needs > allows);
        var advice = new FuseAdvice
        {
            MinimumRatingForLoad = judge.AsMarked(needs),
            MaximumRatingForWire = judge.AsMarked(allows),
            MaximumPeak = allows is { } holds ? ElectricCurrent.FromAmperes(judge.PeakAmperes(holds)) : null,
            IsMarkedWithBlowingCurrent = judge.IsMarkedWithBlowingCurrent,
            WiresKnown = wiresKnown,
            UpsizedRuns =
                conflict && needs is { } rating
                    ?
                    [
                        .. judge
                            .DownstreamRuns.Concat(judge.ReturnRuns)
                            .Where(r => !FuseJudge.Allows(r, rating))
                            .Select(r => new UpsizedRun(
                                r.Run,
                                Thinnest(bike, r, rating),
                                OfItsOwn(judge, r, standard)
                            )),
                    ]
                    : [],
            MaximumContinuousLoad = Current(
                conflict && allows is { } most ? judge.UsableAmperes(most)
                : needs is null ? judge.UsableAmperes(standard[^1])
                : null
            ),
            Explanation = "",
        };
        string marking = judge.IsMarkedWithBlowingCurrent
            ? " (fuses as marked, with the current at which they blow)"
            : "";
        return advice with
        {
            Explanation = Explain(bike, judge, advice, judge.AsMarked(protects), steady) + marking + Assumed(),
        };

        // Beside the range, what it becomes if the cable is not what it was taken for.
        string Assumed()
        {
            if (advice.Largest is null || judge.AllowsAllIfOrdinary(allows!.Value))
                return "";
            double? ordinary = First(standard.Reverse(), judge.AllowsAllIfOrdinary);
            string most = ordinary >= needs ? $"{A(judge.AsMarked(ordinary)!.Value.Amperes)} at most" : "none suits";
            return $" (kind of cable not stated, taken as in free air; if ordinary PVC: {most})";
        }
    }

    /// <summary>By how much to load less, in words without a full stop: the continuous load where that is too large,
    /// else the peak; null where neither is.</summary>
    public static string? Reduce(FuseAdvice advice, ContinuousLoad load, Fuse fuse)
    {
        string fit =
            advice.MaximumRatingForWire is { } allowed && allowed.Amperes != fuse.Rating.Amperes
                ? $" and fit {A(allowed.Amperes)}{(advice.IsMarkedWithBlowingCurrent ? ", as marked" : "")}"
                : "";
        return advice.MaximumContinuousLoad is not { } most ? null
            : load.ContinuousCurrent.Amperes > most.Amperes + 1e-9
                ? $"reduce the continuous load to {RoundedDown(most)}{fit}"
            : advice.MaximumPeak is { } peak && load.WorstCurrent.Amperes > peak.Amperes + 1e-9
                ? $"reduce the peak, {A(load.WorstCurrent.Amperes)}, to {RoundedDown(peak)}{fit}"
            : null;
    }

    private static string Explain(
        Bike bike,
        FuseJudge judge,
        FuseAdvice advice,
        ElectricCurrent? protects,
        ContinuousLoad steady
    )
    {
        string style = TimeCurrentLimits.NameOf(judge.Fuse.Style);
        string[] reduce = Reduce(advice, steady, judge.Fuse) is { } less ? [less] : [];
        if (advice.MinimumRatingForLoad is not { } needs)
            return Ways($"no standard {style} fuse carries this load", [.. reduce, Split]);
        if (!advice.WiresKnown)
            return $"the load needs at least {A(needs.Amperes)}; how large it may be depends on the wires, "
                + $"{(bike.HasNetwork ? "and it feeds none in these settings" : "which are not listed")}";
        if (advice.Largest is { } largest)
            return largest.Amperes > needs.Amperes
                ? $"fit {A(needs.Amperes)} to {A(largest.Amperes)}"
                : $"fit {A(needs.Amperes)}: no other standard {style} rating suits";
        string limit = advice.MaximumRatingForWire is { } allows
            ? $"the load needs {A(needs.Amperes)}, "
                + $"{(protects > allows ? "a dead short is cleared by" : "the wires allow")} "
                + $"{A(allows.Amperes)} at most"
            : $"the load needs {A(needs.Amperes)}, and no standard {style} fuse both protects every wire and clears "
                + $"every dead short";
        string larger = string.Join(
            ", ",
            advice.UpsizedRuns.Select(t =>
                $"'{t.Run.Name}' of "
                + $"{t.Run.Wire}"
                + $"{(t.Wire is { } w ? $" becomes {w}" : " becomes larger than any listed size of its kind")}"
            )
        );
        string[] own =
        [
            .. advice
                .UpsizedRuns.Where(u => u.FuseOfItsOwn is not null)
                .Select(u => OwnFuse(advice, u.Run, u.FuseOfItsOwn!.Value)),
        ];
        // A fuse for each of many wires is a fuse box: the split.
        return Ways(
            limit,
            [
                .. reduce,
                .. own.Length == advice.UpsizedRuns.Length && own.Length is 1 or 2
                    ? [string.Join(" and ", own)]
                    : Array.Empty<string>(),
                larger.Length > 0
                    ? $"fit {A(needs.Amperes)} after {larger}"
                    : "take resistance out of the way to the short: larger or shorter wires, better joints",
                Split,
            ]
        );
    }

    private const string Split = "split the circuit over two fuses";

    private static string Ways(string cause, string[] ways) => $"{cause}: {string.Join("; or ", ways)}";

    // Never above what the rating carries.
    private static string RoundedDown(ElectricCurrent current) => A(Math.Floor(current.Amperes * 10 + 1e-9) / 10);

    // Of the sizes with a rating of their own: those are the ones that are sold.
    private static WireSize? Thinnest(Bike bike, RunAmpacityCheck run, double rating) =>
        WireTable
            .Of(run.Run.Wire.Construction)
            .FirstOrDefault(w =>
                w.CopperArea.SquareMillimeters > run.Run.Wire.CopperArea.SquareMillimeters
                && run.Run.RatingOf(w, run.Rating.Ambient, run.Run.Cable ?? bike.Cable)
                    is { Basis: CurrentRatingBasis.Published } candidate
                && FuseJudge.Allows(run with { Rating = candidate }, rating)
            );

    /// <summary>A fuse at the start of a run as a remedy, in words without a full stop. It is another fuse, of any
    /// marking: its rating is the continuous one.</summary>
    public static string OwnFuse(FuseAdvice advice, Run run, ElectricCurrent most) =>
        $"give '{run.Name}' a fuse of its own at its start, {A(most.Amperes)}"
        + $"{(advice.IsMarkedWithBlowingCurrent ? " continuous" : "")} at most";

    private static ElectricCurrent? OfItsOwn(FuseJudge judge, RunAmpacityCheck run, double[] standard) =>
        judge.DownstreamRuns.Contains(run)
            ? Current(
                First(
                    standard.Reverse(),
                    r => FuseJudge.Allows(run, r) && run.WorstCurrent.Amperes <= judge.UsableAmperes(r) + 1e-9
                )
            )
            : null;

    private static double? First(IEnumerable<double> ratings, Func<double, bool> test)
    {
        foreach (double rating in ratings)
            if (test(rating))
                return rating;
        return null;
    }

    private static ElectricCurrent? Current(double? amperes) =>
        amperes is { } a ? ElectricCurrent.FromAmperes(a) : null;

    private static string A(double amperes) => string.Create(CultureInfo.InvariantCulture, $"{amperes:0.##} A");
}
