using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts the sizes found into words and numbers; every number is of a cold solution of the harness, not of the
/// search.</summary>
internal sealed class SizingReporter(SizingProblem problem, SizingTrial trial, int[]? found)
{
    private readonly Bike _bike = problem.Bike;

    // The sizes found stay solved in the one while others are in the other.
    private readonly SizingTrial _changed = new(problem);
    private readonly Lazy<int[]> _nearRatings = new(() => [.. trial.StatesNearRatings(found!)]);

    public WireSizingResult Report()
    {
        bool isOpen = _bike.Runs.Any(r => r.WireIsOpen);
        FittedWires? fitted = isOpen ? null : FittedWires.Of(problem, _bike);
        FittedWires? chosen = found is null ? null : FittedWires.Of(problem, problem.With(found));
        return new WireSizingResult
        {
            Sizes = [.. problem.Offered.Select(s => problem.Sizes[s])],
            Supply = ElectricPotential.FromVolts(problem.SupplyVolts),
            Runs = chosen is null ? [] : [.. problem.Runs.Select(r => RunOf(r, chosen))],
            Lamps =
            [
                .. _bike.Lamps.Select(
                    (l, i) =>
                        new LampSizing
                        {
                            Lamp = l,
                            AllowedDrop =
                                problem.Limits[i] < 1 ? Ratio.FromDecimalFractions(problem.Limits[i]) : null,
                            DropFitted = fitted?.WorstDrop(i)?.Drop,
                            SettingFitted = fitted?.WorstDrop(i)?.Point.Setting,
                            DropChosen = chosen?.WorstDrop(i)?.Drop,
                            SettingChosen = chosen?.WorstDrop(i)?.Point.Setting,
                        }
                ),
            ],
            CopperFitted = isOpen ? null : CopperOf(_bike),
            CopperChosen = chosen is null ? null : CopperOf(chosen.Bike),
            Explanation = chosen is null ? Unfound() : Explain(chosen.Bike, isOpen ? null : CopperOf(_bike)),
            Findings =
            [
                .. chosen is null ? [] : Unmet(chosen).TogetherByKind().Concat(Kinds(chosen)),
                .. fitted?.Findings() ?? [],
            ],
            Sized = chosen?.Bike,
        };
    }

    internal static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static Volume CopperOf(Bike bike) =>
        Volume.FromCubicCentimeters(bike.Runs.Sum(r => r.Wire.CopperArea.SquareMillimeters * r.Length.Meters));

    private string Explain(Bike sized, Volume? fitted)
    {
        string[] sizes =
        [
            .. problem
                .Runs.GroupBy(r => found![r])
                .OrderBy(g => g.Key)
                .Select(g =>
                    $"{problem.Sizes[g.Key]} ({g.Count()} {(g.Count() == 1 ? "run" : "runs")}, "
                    + $"{N(g.Sum(r => _bike.Runs[r].Length.Meters))} m)"
                ),
        ];
        double copper = CopperOf(sized).CubicCentimeters;
        string against = fitted is not { } was
            ? ""
            : Math.Round(copper - was.CubicCentimeters, 2) switch
            {
                < 0 and var less => $", {N(-less)} cm³ less than as fitted",
                > 0 and var more => $", {N(more)} cm³ more than as fitted",
                _ => ", as much as fitted",
            };
        return $"{string.Join(", ", sizes)}: {N(copper)} cm³ of copper{against}";
    }

    // What fails with the largest size everywhere, and what of it no wire remedies.
    private string Unfound()
    {
        WireSize largest = problem.Sizes[problem.Offered[^1]];
        int[] all = problem.Choice(_ => problem.Offered[^1]);
        FittedWires wires = FittedWires.Of(problem, problem.With(all));
        IEnumerable<string> reasons =
        [
            .. problem
                .Runs.Where(r => !problem.IsStrongEnough(r, problem.Offered[^1]))
                .Select(r => problem.LeastArea(r))
                .Distinct()
                .Select(least =>
                    $"{N(largest.CopperArea.SquareMillimeters)} mm² is less than the {N(least)} mm² wanted for strength"
                ),
            .. Enumerable
                .Range(0, all.Length)
                .Where(r => !problem.MeetsFuse(r, all[r]))
                .Select(r => BelowFuse(r, all[r])),
            .. Enumerable.Range(0, _bike.Lamps.Length).Select(l => TooLargeDrop(wires, l)).OfType<string>(),
            .. wires
                .Overloaded()
                .Select(r =>
                    $"'{r.Run.Name}' is rated {N(r.Rated)} A and carries {N(r.Amperes)} A " + $"({r.Setting})"
                ),
            .. trial.ShortFailures(all).Select(f => ShortOf(f.Clearing, f.Fuse)),
        ];
        return $"no choice of listed sizes was found: even with {largest} "
            + $"{(problem.Kept.All(k => k < 0) ? "everywhere" : "wherever the wire is open")}, the largest "
            + $"{(problem.Options.Stock.IsDefaultOrEmpty ? "listed" : "in stock")}, {string.Join("; ", reasons)}";
    }

    private string BelowFuse(int run, int size)
    {
        CurrentRating rating = problem.RatingOf(_bike.Runs[run], problem.Sizes[size]);
        return rating.Current is { } rated
            ? $"'{_bike.Runs[run].Name}' ({problem.Sizes[size]}) is rated {N(rated.Amperes)} A, below its fuse "
                + $"'{problem.FuseOf[run]!.Name}' of {N(problem.FuseAmperes(run))} A"
            : $"'{_bike.Runs[run].Name}' has no rating: {rating.Explanation}";
    }

    // What the sizes do not keep, since no listed wire would.
    private IEnumerable<Finding> Unmet(FittedWires chosen)
    {
        int[] eased =
        [
            .. Enumerable.Range(0, _bike.Lamps.Length).Where(l => problem.Allowed[l] > problem.Limits[l]),
        ];
        if (eased.Length == 0)
            yield break;
        FittedWires largest = FittedWires.Of(problem, problem.With(problem.Choice(_ => problem.Offered[^1])));
        foreach (int lamp in eased)
            if (
                chosen.WorstDrop(lamp) is { } worst
                && worst.Drop.DecimalFractions > problem.Limits[lamp] + SizingProblem.Tolerance
            )
                yield return new Finding(FindingKind.DropLimitNotMet, Severity.Fault, _bike.Lamps[lamp].Lamp)
                {
                    Value = worst.Drop,
                    Limit = Ratio.FromDecimalFractions(problem.Limits[lamp]),
                    Setting = worst.Point.Setting,
                    Detail = WhatWouldDo(largest, lamp),
                };
    }

    private string WhatWouldDo(FittedWires largest, int lamp)
    {
        FittedWires.LampDrop worst = largest.WorstDrop(lamp)!;
        WireSize wire = problem.Sizes[problem.Offered[^1]];
        double limit = problem.Limits[lamp],
            rest = OtherDrop(largest.Bike, worst.Point, lamp) ?? 0,
            wires = worst.Drop.DecimalFractions - rest;
        const string Relay = "feed it through a relay near the battery, with a fuse of its own";
        string others = problem.Options.CountBatteryDrop
            ? "joints, switches, fuses and battery"
            : "joints, switches and fuses";
        return rest >= limit
            ? $"with the largest wire ({wire}) it drops {N(worst.Drop.Percent)} %, and {others} alone "
                + $"{N(100 * rest)} %, which no wire remedies: clean or renew them, or {Relay}"
            : $"with the largest wire ({wire}) it drops {N(worst.Drop.Percent)} %: use larger wire, runs of "
                + $"{Math.Floor(100 * (limit - rest) / wires):0} % of their length, or {Relay}";
    }

    // The wires that are taken as in free air, and as ordinary cable would be rated below their fuse or load.
    private IEnumerable<Finding> Kinds(FittedWires chosen)
    {
        string[] low =
        [
            .. problem
                .Runs.Select(r => (Run: chosen.Bike.Runs[r], Index: r))
                .Where(r =>
                    (r.Run.Cable ?? _bike.Cable) is null
                    && CurrentRating
                        .Calculate(
                            r.Run.Wire,
                            problem.Options.Fuses.AirRoundWires(_bike),
                            r.Run.Bundle,
                            CableKind.Ordinary
                        )
                        .Current
                        is { } ordinary
                    && ordinary.Amperes
                        < Math.Max(
                            problem.FuseAmperes(r.Index),
                            chosen.Points.Max(p => Math.Abs(p.Solved.RunAmperes(r.Index)))
                        ) - SizingProblem.Tolerance
                )
                .Select(r => r.Run.Name),
        ];
        if (low.Length > 0)
            yield return new Finding(FindingKind.CableKindAssumed, Severity.Caution, "cable") { Parts = [.. low] };
    }

    private string? TooLargeDrop(FittedWires wires, int lamp)
    {
        if (
            wires.WorstDrop(lamp) is not { } worst
            || worst.Drop.DecimalFractions <= problem.Allowed[lamp] + SizingProblem.Tolerance
        )
            return null;
        string text =
            $"the {_bike.Lamps[lamp].Lamp} drops {N(worst.Drop.Percent)} % ({worst.Point.Setting}), limit "
            + $"{N(100 * problem.Allowed[lamp])} %";
        if (OtherDrop(wires.Bike, worst.Point, lamp) is not { } rest)
            return text;
        return $"{text}; joints, switches{(problem.Options.CountBatteryDrop ? ", fuses and battery" : " and fuses")} "
            + $"alone drop {N(100 * rest)} %, which no wire remedies";
    }

    // The share of the source voltage that a lamp drops elsewhere than in wire.
    private double? OtherDrop(Bike bike, OperatingPoint point, int lamp) =>
        VoltageDropAnalysis.Breakdown(bike, point, lamp) is { } breakdown
            ? breakdown
                .Entries.Where(e =>
                    e.Kind is not (VoltageDropKind.FeedWire or VoltageDropKind.ReturnWire)
                    && (problem.Options.CountBatteryDrop || e.Kind != VoltageDropKind.Battery)
                )
                .Sum(e => e.Voltage.Volts) / breakdown.SupplyVoltage.Volts
            : null;

    private static string ShortOf(ShortCircuitCheck clearing, Fuse fuse) =>
        $"a dead short at the end of '{clearing.Run.Name}' draws {N(clearing.ProspectiveCurrent!.Value.Amperes)} A: "
        + $"the fuse '{fuse.Name}' {clearing.Opening!.Explanation}";

    private RunSizing RunOf(int run, FittedWires chosen)
    {
        Run fitted = _bike.Runs[run];
        OperatingPoint worst = chosen.Points.MaxBy(p => p.Solved.RunAmperes(run))!;
        RunState state = worst.Runs[run];
        WireSize wire = problem.Sizes[found![run]];
        (SizingConstraint limit, int lamp, string text) = LimitOf(run);
        return new RunSizing
        {
            Run = fitted,
            Chosen = wire,
            Limit = limit,
            LimitingLamp = lamp >= 0 ? _bike.Lamps[lamp] : null,
            Explanation = text,
            WorstCurrent = ElectricCurrent.FromAmperes(Math.Abs(state.Current.Amperes)),
            WorstSetting = worst.Setting,
            Drop = ElectricPotential.FromVolts(Math.Abs(state.WireDrop.Volts + state.JointDrop.Volts)),
            Rating = problem.RatingOf(fitted, wire),
            Fuse = problem.FuseOf[run],
        };
    }

    // What keeps a run from the next smaller of the sizes chosen; where there is none, from the next smaller that was
    // offered.
    private (SizingConstraint Limit, int Lamp, string Text) LimitOf(int run)
    {
        int[] used = [.. problem.Runs.Select(r => found![r]).Where(s => s < found![run])];
        int[] offered = [.. problem.Offered.Where(s => s < found![run])];
        if (offered.Length == 0)
            return (SizingConstraint.SmallestListed, -1, $"{problem.Sizes[found![run]]} is the smallest listed");
        if (_bike.Runs[run].Length.Meters == 0)
            return (SizingConstraint.None, -1, "it has no length and costs no copper");
        int smaller = used.Length > 0 ? used.Max() : offered[^1];
        WireSize wire = problem.Sizes[smaller];
        if (!problem.IsStrongEnough(run, smaller))
            return (
                SizingConstraint.Mechanical,
                -1,
                $"{wire} is smaller than the {N(problem.LeastArea(run))} mm² wanted for strength"
            );
        if (!problem.MeetsFuse(run, smaller))
        {
            CurrentRating rating = problem.RatingOf(_bike.Runs[run], wire);
            string rated = rating.Current is { } amperes
                ? $"{wire} is rated {N(amperes.Amperes)} A"
                : $"the rating of " + $"{wire} is unknown: {rating.Explanation}";
            return problem.FuseOf[run] is { } fuse
                ? (SizingConstraint.Fuse, -1, $"{rated}; the fuse '{fuse.Name}' is {N(problem.FuseAmperes(run))} A")
                : (SizingConstraint.Heat, -1, rated);
        }

        int[] sizes = [.. found!];
        sizes[run] = smaller;
        IEnumerable<int> states = trial.WorstStates(found!, run, smaller).Union(_nearRatings.Value).Order();
        if (_changed.WorstFailure(sizes, states) is { } failure)
            return failure switch
            {
                { Lamp: >= 0 and var lamp } => (
                    SizingConstraint.Drop,
                    lamp,
                    $"with {wire} the "
                        + $"{_bike.Lamps[lamp].Lamp} would drop {N(100 * (problem.Allowed[lamp] + failure.Excess))} % "
                        + $"({failure.Setting}), limit {N(100 * problem.Allowed[lamp])} %"
                ),
                { Run: >= 0 and var other } => (
                    SizingConstraint.Heat,
                    -1,
                    $"with {wire} the run "
                        + $"'{_bike.Runs[other].Name}' would carry {N(100 * failure.Excess)} % more than its rating "
                        + $"({failure.Setting})"
                ),
                _ => (SizingConstraint.Drop, -1, $"with {wire} no operating point was found ({failure.Setting})"),
            };
        foreach ((ShortCircuitCheck clearing, Fuse fuse) in trial.ShortFailures(sizes))
            return (SizingConstraint.Short, -1, $"with {wire} {ShortOf(clearing, fuse)}");
        return (SizingConstraint.FewSizes, -1, $"{wire} would do, but is one more size to buy");
    }
}
