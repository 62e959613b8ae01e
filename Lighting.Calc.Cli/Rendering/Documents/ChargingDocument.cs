using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>charging</c> gives: break-even of each setting, the balance over engine speed, the ride, battery
/// run times.</summary>
internal static class ChargingDocument
{
    private const int MostLines = 8;

    private static readonly Columns<BalancePoint> s_point = new()
    {
        { "rpm", "rpm", p => p.Speed },
        { "output A", "outputA", p => p.Output },
        { "surplus A", "netA", p => p.Net },
        { "", "", p => Bar(p) },
    };

    private static readonly Columns<(ChargingBalance Balance, BalancePoint Point)> s_series = new Columns<(
        ChargingBalance Balance,
        BalancePoint Point
    )>
    {
        { "setting", "setting", s => s.Balance.Setting },
        { "demand A", "demandA", s => s.Balance.Demand },
        { s_point, s => s.Point },
    }.Only("setting", "rpm", "outputA", "demandA", "netA");

    private static readonly Columns<RideStretchBalance> s_stretch = new()
    {
        { "stretch", "stretch", s => s.Stretch.Stretch },
        { "minutes", "minutes", s => s.Stretch.Duration.Minutes, "F0" },
        { "rpm", "rpm", s => s.Stretch.Speed },
        { "demand A", "demandA", s => s.Demand },
        { "output A", "outputA", s => s.Output },
        { "net Ah", "netAmpereHours", s => s.NetCharge },
        { "charge %", "stateOfCharge", s => s.StateOfCharge },
    };

    private static readonly Columns<RideBalance> s_ride = new()
    {
        { "netAmpereHours", r => r.NetCharge },
        { "finalStateOfCharge", r => r.FinalStateOfCharge },
        {
            "stretches",
            s_stretch.Only("stretch", "rpm", "minutes", "demandA", "netAmpereHours", "stateOfCharge"),
            r => r.Stretches
        },
    };

    private static readonly Columns<BatteryRunTime> s_runTime = new()
    {
        { "setting", s => s.Setting },
        { "loadA", s => s.Load },
        { "toStateOfCharge", s => s.To },
        { "timeH", s => s.Time?.Hours },
    };

    // Half charge and no start of a load beside each other.
    private static readonly Columns<BatteryRunTime[]> s_runTimePair = new()
    {
        { "load A", "loadA", s => s[0].Load },
        { "to 50 %", "toHalfHours", s => Figures.Right(Hours(s[0])) },
        { "to no start", "toNoStartHours", s => Figures.Right(Hours(s[1])) },
        { "setting", "setting", s => s[0].Setting },
    };

    public static Document Of(ChargingSystem system, ChargingReport report, EngineReport? engine)
    {
        ChargingBalance worst = report.Worst!,
            shown = report.Typical ?? worst;
        Columns<ChargingBalance> balance = Balances(system);
        Finding[] findings = [.. report.Findings.Concat(engine?.Findings ?? []).OrderByDescending(f => f.Severity)];
        return new Document(
            CommonBlocks.TitleOf(system.Bike, "Charging"),
            (
                report.Typical is { } typical
                    ? $"The usual setting of the ride draws {Figures.Amperes(typical.Demand)} "
                        + $"({typical.Setting}); it is covered {BreakEvenWords.Of(typical.BreakEven)}.\n"
                    : ""
            )
                + $"The largest average load is {Figures.Amperes(worst.Demand)} ({worst.Setting}); it is covered "
                + $"{BreakEvenWords.Of(worst.BreakEven)}.",
            Cautions.OfEngine(system.Bike),
            () =>
            {
                var legend = new SettingLegend();
                return
                [
                    new Heading("Average load and break-even"),
                    // Settings of one load make one line.
                    legend.In(
                        balance
                            .Only("demandA", "breakEven", "setting")
                            .Table(
                                report
                                    .Balances.OrderByDescending(b => b.Load.Amperes)
                                    .DistinctBy(b => Math.Round(b.Load.Amperes, 3))
                                    .Take(MostLines)
                            )
                    ),
                    legend.Block,
                    new Paragraph(
                        "Average: each load counts for its duty in lamps.csv, the share of the ride for which it is on "
                            + $"while switched on. Covered: the output at the charging voltage is as large; from a "
                            + $"lower speed on, at a lower voltage, the battery no longer discharges."
                            + $"{AssumedDuties(report)}"
                    ),
                    .. system.Machines.Select(m =>
                        Residuals(
                            $"Fitted machine: {Figures.Amperes(m.Machine.MaximumCurrent)} at most, "
                                + $"{Figures.Rpm(m.Machine.CornerSpeed)} corner speed",
                            m.Residuals
                        )
                    ),
                    .. system.Coils.Select(c =>
                        Residuals($"Fitted coil: {Figures.Amperes(c.Source.MaximumCurrent)} at most", c.Residuals)
                    ),
                    new Heading($"Output beyond the average load, at the charging voltage ({shown.Setting})"),
                    s_point.Table(shown.Over(system.Grid())),
                    new PageOnly(() => [ChargingCharts.Balance(system, report)]),
                    s_series.Spreadsheet(report.Balances.SelectMany(b => b.Over(system.Grid()).Select(p => (b, p)))),
                    .. engine is null ? [] : Engine(engine, system.Bike),
                    .. report.Ride is { } ride ? RideBlocks(ride) : [],
                    new Heading(
                        $"Battery run time, engine off, from {Figures.Percent(system.Options.InitialStateOfCharge)} "
                            + $"(Peukert, exponent {Figures.Number(system.Options.PeukertExponent, 2)})"
                    ),
                    s_runTimePair.Table(report.Standing.Chunk(2)),
                    .. CommonBlocks.FindingBlocks([.. findings.Where(f => f.Severity != Severity.Note)]),
                ];
            },
            json =>
            {
                json.Write("bike", system.Bike.Name);
                json.Write("chargingVoltageV", system.Bike.ChargingVoltage);
                json.Write("balances", balance, report.Balances);
                if (report.Ride is { } ride)
                    json.Write("ride", s_ride, ride);
                if (engine is not null)
                    json.Write("engine", EngineBlocks.Columns, engine);
                json.Write("batteryRunTimes", s_runTime, report.Standing);
                json.Write("findings", CommonBlocks.Finding, findings);
            }
        );
    }

    private static string AssumedDuties(ChargingReport report) =>
        report.Findings.FirstOrDefault(f => f.Kind == FindingKind.DutyAssumed) is { } assumed
            ? $" {assumed.Message}"
            : "";

    private static IEnumerable<Block> Engine(EngineReport engine, Bike bike) =>
        [
            .. EngineBlocks.Table(engine, bike),
            new Paragraph(EngineBlocks.Sentences(engine)),
            new PageOnly(() => [EngineBlocks.LightChart(engine, bike), EngineBlocks.VoltageChart(engine, bike)]),
            .. EngineBlocks.RegulatorTable(engine),
            .. EngineBlocks.Tests(engine, bike),
            .. EngineBlocks.GeneratorTests(engine, bike),
        ];

    private static Block[] RideBlocks(RideBalance ride) =>
        [.. RideTable(ride), new PageOnly(() => [ChargingCharts.Ride(ride)])];

    /// <summary>The ride, stretch by stretch.</summary>
    public static Block[] RideTable(RideBalance ride) =>
        [
            new Heading($"Ride of {Figures.Number(ride.Duration.Minutes, 0)} min: {Net(ride.NetCharge)}"),
            s_stretch.Table(ride.Stretches),
        ];

    /// <summary>A battery run time in words.</summary>
    public static string Hours(BatteryRunTime standing) =>
        standing.Outcome switch
        {
            BatteryRunTimeOutcome.Reached => $"{Figures.Number(standing.Time!.Value.Hours, 1)} h",
            BatteryRunTimeOutcome.AlreadyThere => "at or below it",
            BatteryRunTimeOutcome.NoLoad => "never",
            BatteryRunTimeOutcome.CapacityNotKnown => "capacity not listed",
            _ => throw new InvalidOperationException($"Unknown outcome {standing.Outcome}."),
        };

    private static Columns<ChargingBalance> Balances(ChargingSystem system) =>
        new()
        {
            { "setting", "setting", b => b.Setting },
            { "average A", "demandA", b => b.Demand },
            { "covered", "breakEven", b => new Cell(BreakEvenWords.Of(b.BreakEven), Outcome(b.BreakEven.Outcome)) },
            { "breakEvenRpm", b => b.BreakEven.Speed },
            { "points", s_point, b => b.Over(system.Grid()) },
        };

    private static Paragraph Residuals(string title, IEnumerable<FitResidual> residuals) =>
        new($"{title}. Residuals: " + string.Join(", ", residuals.Select(Residual)) + ".");

    private static string Residual(FitResidual residual) =>
        $"{Figures.Rpm(residual.Point.Speed)} {Figures.Number(residual.Residual.Amperes, 2)} A";

    private static string Net(ElectricCharge? net) =>
        net is { } known ? $"{Figures.Number(known.AmpereHours, 2)} Ah net" : "net unknown, the curve does not reach";

    // One mark for each half amp into (+) or out of (-) the battery.
    private static string Bar(BalancePoint point)
    {
        if (point.Net is not { } net)
            return "";
        int marks = Math.Min(30, (int)Math.Round(Math.Abs(net.Amperes) * 2));
        return new string(net.Amperes < 0 ? '-' : '+', marks);
    }

    private static string Outcome(BreakEvenOutcome outcome) =>
        outcome switch
        {
            BreakEvenOutcome.At => "at",
            BreakEvenOutcome.Always => "always",
            BreakEvenOutcome.Never => "never",
            BreakEvenOutcome.BelowCurve => "below curve",
            BreakEvenOutcome.NotKnown => "not known",
            _ => throw new InvalidOperationException($"Unknown outcome {outcome}."),
        };
}
