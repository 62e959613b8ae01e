using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Puts the sizes found into words and numbers; every number is of a cold solution of the harness, not of the
/// search.</summary>
internal sealed class SizingReporter(SizingProblem problem, int[]? found)
{
    private readonly Bike _bike = problem.Bike;
    private readonly SizingTrial _trial = new(problem);
    private readonly ShortCheck _shorts = new(problem);

    public WireSizingResult Report()
    {
        Bike? sized = found is null ? null : problem.With(found);
        SizedPoints fitted = SizedPoints.Of(problem, problem.Network);
        SizedPoints? chosen = sized is null ? null : SizedPoints.Of(problem, new HarnessNetwork(sized));
        if (chosen is not null)
            Verify(chosen);
        ImmutableArray<RunSizing> runs = found is null
            ? []
            : [.. Enumerable.Range(0, found.Length).Select(i => RunOf(i, found, chosen!))];
        return new WireSizingResult
        {
            Sizes = problem.Sizes,
            AllowedDrop = Ratio.FromDecimalFractions(problem.Allowed),
            Supply = ElectricPotential.FromVolts(problem.SupplyVolts),
            Runs = runs,
            Lamps =
            [
                .. _bike.Lamps.Select(
                    (l, i) =>
                        new LampSizing
                        {
                            Lamp = l,
                            DropFitted = fitted.WorstDrop(i)?.Drop,
                            SettingFitted = fitted.WorstDrop(i)?.Point.Setting,
                            DropChosen = chosen?.WorstDrop(i)?.Drop,
                            SettingChosen = chosen?.WorstDrop(i)?.Point.Setting,
                        }
                ),
            ],
            CopperFitted = FittedCopper,
            CopperChosen = found is null ? null : Volume.FromCubicCentimeters(problem.CopperOf(found)),
            Explanation = found is null
                ? new InfeasibleExplainer(problem, _shorts).Explain()
                : Explain(problem.CopperOf(found), FittedCopper.CubicCentimeters),
            Findings = new FittedReview(problem, fitted, _shorts, runs).Findings(),
            Sized = sized,
        };
    }

    private Volume FittedCopper =>
        Volume.FromCubicCentimeters(_bike.Runs.Sum(r => r.Wire.CopperArea.SquareMillimeters * r.Length.Meters));

    private static string Explain(double copper, double fitted)
    {
        string against =
            copper < fitted - 1e-9 ? $"{N(fitted - copper)} cm³ less than as fitted"
            : copper > fitted + 1e-9 ? $"{N(copper - fitted)} cm³ more than as fitted"
            : "as much as fitted";
        return $"{N(copper)} cm³ of copper, {against}";
    }

    private void Verify(SizedPoints chosen)
    {
        for (int i = 0; i < _bike.Lamps.Length; i++)
            if (chosen.WorstDrop(i) is { } worst && worst.Drop.DecimalFractions > problem.Allowed + 1e-8)
                throw new InvalidOperationException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The sizes found leave '{_bike.Lamps[i].Lamp}' with a drop of {worst.Drop.Percent:G6} % when "
                            + $"solved afresh ('{worst.Point.Setting}')."
                    )
                );
    }

    private RunSizing RunOf(int run, int[] sizes, SizedPoints chosen)
    {
        Run fitted = _bike.Runs[run];
        OperatingPoint worst = chosen.Points.MaxBy(p => Math.Abs(p.Runs[run].Current.Amperes))!;
        RunState state = worst.Runs[run];
        WireSize wire = problem.Sizes[sizes[run]];
        (SizingConstraint limit, int lamp, string text) = LimitOf(run, sizes);
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
            CopperFitted = Volume.FromCubicCentimeters(fitted.Wire.CopperArea.SquareMillimeters * fitted.Length.Meters),
            CopperChosen = Volume.FromCubicCentimeters(problem.Copper[run][sizes[run]]),
        };
    }

    private (SizingConstraint Limit, int Lamp, string Text) LimitOf(int run, int[] sizes)
    {
        if (sizes[run] == 0)
            return (SizingConstraint.SmallestListed, -1, $"{problem.Sizes[0]} is the thinnest listed");
        int thinner = sizes[run] - 1;
        WireSize wire = problem.Sizes[thinner];
        if (_bike.Runs[run].Length.Meters == 0)
            return (SizingConstraint.None, -1, "it has no length and costs no copper");
        if (!problem.IsStrongEnough(thinner))
            return (
                SizingConstraint.Mechanical,
                -1,
                $"{wire} is thinner than the {N(problem.Options.MinimumArea.SquareMillimeters)} mm² wanted for strength"
            );
        if (!problem.MeetsFuse(run, thinner))
        {
            CurrentRating rating = problem.RatingOf(_bike.Runs[run], wire);
            string than = rating.Current is { } carries
                ? $"{wire} carries {N(carries.Amperes)} A"
                : $"whether {wire} carries it is not known: {rating.Explanation}";
            return problem.FuseOf[run] is { } fuse
                ? (
                    SizingConstraint.Fuse,
                    -1,
                    $"{than}; the fuse '{fuse.Name}' lets {N(problem.FuseAmperes(run))} A through"
                )
                : (SizingConstraint.Heat, -1, than);
        }

        int[] trial = [.. sizes];
        trial[run] = thinner;
        if (_trial.WorstFailure(trial) is { } failure)
        {
            Setting setting = problem.States[failure.State].Setting;
            if (failure is { Lamp: < 0, Run: < 0 })
                return (SizingConstraint.Drop, -1, $"with {wire} no operating point was found ({setting})");
            return failure.Lamp >= 0
                ? (
                    SizingConstraint.Drop,
                    failure.Lamp,
                    $"with {wire} the {_bike.Lamps[failure.Lamp].Lamp} would lose "
                        + $"{N(100 * (problem.Allowed + failure.Excess))} % ({setting}), {N(100 * problem.Allowed)} % "
                        + $"allowed"
                )
                : (
                    SizingConstraint.Heat,
                    -1,
                    $"with {wire} the run '{_bike.Runs[failure.Run].Name}' would carry {N(100 * failure.Excess)} % "
                        + $"more than its rating ({setting})"
                );
        }

        foreach ((ShortCircuitCheck clearing, Fuse fuse) in _shorts.Failures(trial))
            return (
                SizingConstraint.Short,
                -1,
                $"with {wire} a dead short at the end of '{clearing.Run.Name}' draws "
                    + $"{N(clearing.ProspectiveCurrent!.Value.Amperes)} A: the fuse '{fuse.Name}' "
                    + $"{clearing.Opening!.Explanation}"
            );
        return (SizingConstraint.None, -1, $"{wire} would do as well");
    }

    internal static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
