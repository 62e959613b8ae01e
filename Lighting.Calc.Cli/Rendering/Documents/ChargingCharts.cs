using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The charts of a charging report: current into the battery over engine speed, state of charge over the
/// ride.</summary>
internal static class ChargingCharts
{
    // As many lines as a reader keeps apart.
    private const int MostLines = 6;

    // And as many where another chart stands beside it.
    private const int FewLines = 4;
    private const int GridSteps = 48;

    /// <summary>Output beyond the average load over engine speed: the worst setting, the ride's usual one, and others
    /// of distinct load.</summary>
    /// <param name="system">The charging system.</param>
    /// <param name="report">Its report.</param>
    /// <param name="letter">Names a setting in short; null for its own words.</param>
    public static LineChart? Balance(
        ChargingSystem system,
        ChargingReport report,
        Func<Setting, string>? letter = null
    )
    {
        ChargingBalance[] settings = Chosen(report, letter is null ? MostLines : FewLines);
        RotationalSpeed[] speeds = [.. system.Grid(GridSteps).Where(s => s.RevolutionsPerMinute > 0)];
        ChartLine[] lines =
        [
            .. settings.Select(b => Line(b, speeds, letter)).Where(l => l.Points.Any(p => p.Y is not null)),
        ];
        if (lines.Length == 0)
            return null;
        // Every break-even is marked; two are named, since names of near ones would lie over each other.
        ChartMark[] marks =
        [
            .. settings
                .Where(b => b.BreakEven is { Outcome: BreakEvenOutcome.At })
                .Select(b => new ChartMark(
                    b.BreakEven.Speed!.Value.RevolutionsPerMinute,
                    0,
                    b == report.Worst ? $"most: {Figures.Rpm(b.BreakEven.Speed.Value)}"
                        : b == report.Typical ? $"usual: {Figures.Rpm(b.BreakEven.Speed.Value)}"
                        : ""
                )),
        ];
        return new LineChart(
            "Output beyond the average load over engine speed",
            "At the charging voltage. Above zero there is current for the battery, below zero the battery adds to it. "
                + string.Join(
                    " ",
                    settings.Select(b =>
                        $"{b.Setting}: {Figures.Amperes(b.Demand)} on average, covered "
                        + $"{BreakEvenWords.Of(b.BreakEven)}."
                    )
                ),
            "engine speed, rpm",
            "output less load, A (diamond: covered)",
            lines,
            marks,
            0,
            0
        );
    }

    /// <summary>State of charge over the ride; null where it is not known.</summary>
    public static LineChart? Ride(RideBalance ride)
    {
        var points = new List<ChartPoint> { new(0, ride.InitialStateOfCharge.Percent) };
        double minutes = 0;
        foreach (RideStretchBalance stretch in ride.Stretches)
        {
            if (stretch.StateOfCharge is not { } charge)
                break;
            // A battery that becomes full or flat on the way stays so to the end of the stretch.
            if (stretch.LimitAfter is { } after && stretch.Limit != StateOfChargeLimit.None)
                points.Add(new ChartPoint(minutes + after.Minutes, charge.Percent));
            minutes += stretch.Stretch.Duration.Minutes;
            points.Add(new ChartPoint(minutes, charge.Percent));
        }

        if (points.Count < 2)
            return null;
        return new LineChart(
            "State of charge over the ride",
            $"From {Figures.Percent(ride.InitialStateOfCharge)} to {Figures.Number(points[^1].Y!.Value, 1)} % after "
                + $"{Figures.Number(minutes, 0)} min. "
                + string.Join(
                    " ",
                    ride.Stretches.Select(s =>
                        $"{s.Stretch.Stretch}: {(s.StateOfCharge is { } c ? Figures.Percent(c) : "unknown")} at its "
                        + $"end."
                    )
                ),
            "minutes",
            "state of charge, %",
            [new ChartLine("state of charge", points)],
            [],
            Math.Min(90, points.Min(p => p.Y!.Value)),
            100
        );
    }

    private static ChargingBalance[] Chosen(ChargingReport report, int most)
    {
        ChargingBalance[] distinct =
        [
            .. report.Balances.OrderByDescending(b => b.Demand.Amperes).DistinctBy(b => Math.Round(b.Load.Amperes, 2)),
        ];
        IEnumerable<ChargingBalance> spread =
            distinct.Length <= most
                ? distinct
                : Enumerable.Range(0, most).Select(i => distinct[i * (distinct.Length - 1) / (most - 1)]);
        ChargingBalance?[] first = [report.Worst, report.Typical];
        return
        [
            .. first
                .OfType<ChargingBalance>()
                .Concat(spread)
                .DistinctBy(b => Math.Round(b.Load.Amperes, 2))
                .Take(most)
                .OrderByDescending(b => b.Demand.Amperes),
        ];
    }

    private static ChartLine Line(
        ChargingBalance balance,
        IEnumerable<RotationalSpeed> speeds,
        Func<Setting, string>? letter
    ) =>
        new(
            $"{Figures.Amperes(balance.Demand)} on average, {BreakEvenWords.Of(balance.BreakEven)}: "
                + (letter is null ? balance.Setting.ToString() : $"setting {letter(balance.Setting)}"),
            [.. balance.Over(speeds).Select(p => new ChartPoint(p.Speed.RevolutionsPerMinute, p.Net?.Amperes))]
        );
}
