namespace Lighting.Calc.Cli.Rendering;

/// <summary>The page of <c>check</c>: a first sheet that answers alone, then the drawing, then the tables.</summary>
internal sealed class CheckPage(BikeReport report, ToleranceReport? tolerance, FusePlan? plan)
{
    /// <summary>What a workshop writes in.</summary>
    public static readonly string[] Fields = ["Workshop", "Customer", "Mileage", "Date", "Signature"];

    // Two lists that contradict each other, or one that leads nowhere.
    private static readonly FindingKind[] s_disagreements =
    [
        FindingKind.LampDark,
        FindingKind.LampFedUnintended,
        FindingKind.SwitchWithoutContact,
        FindingKind.PositionWithoutContact,
        FindingKind.PositionNotNamed,
        FindingKind.PointWithOneConnection,
        FindingKind.PointsIgnored,
        FindingKind.FuseNotConnected,
        FindingKind.FuseFeedsNothing,
    ];

    // What an estimate may be wrong by: a first sheet of more than this may run over.
    private const double AlmostFull = 0.93;

    private int? _printed;

    private WorkItem[] Work => field ??= CheckWork.Of(report);

    // What stands below the work.
    private Block[] Below =>
        field ??=
        [
            .. CheckDocument.Beside(report).Where(_ => report.Verdict != BikeVerdict.Suits),
            .. Plot(report) is { } plot ? [plot] : Array.Empty<Block>(),
        ];

    /// <summary>The work to do, as much as fits, and one plot over engine speed.</summary>
    public IEnumerable<Block> FirstSheet() => FirstSheet(_printed ??= PrintedWork());

    /// <summary>The drawing, then the tables.</summary>
    public IEnumerable<Block> Rest()
    {
        var legend = new SettingLegend();
        yield return CircuitBlock.Of(report.Bike, report.Heaviest, Drawing.UnsuitableParts.Of(report));
        int printed = _printed ??= PrintedWork();
        if (printed < Work.Length)
            yield return new PrintOnly([
                new Paragraph("Work, continued from the first sheet:"),
                new WorkList(report.Causes) { Items = Work[printed..], Start = printed + 1 },
            ]);
        IEnumerable<Block> tables =
        [
            .. Disagreements(report),
            .. Fuses(report, legend),
            .. Lamps(report, legend),
            .. Charging(report, legend),
            .. tolerance is null ? [] : ToleranceDocument.Blocks(tolerance),
            new Heading("Settings, by their letters"),
            legend.Lines,
            .. CommonBlocks.FindingBlocks([.. report.Findings.Where(f => !s_disagreements.Contains(f.Kind))]),
        ];
        foreach (Block block in tables)
            yield return block;
    }

    // The most dangerous pieces of work for which the first sheet has room; one at least.
    private int PrintedWork()
    {
        Block[] odds = [.. tolerance is null ? [] : ToleranceDocument.Odds(tolerance)];
        int printed = Work.Length;
        while (
            printed > 1
            && PrintedHeight.OfFirst(odds.Concat(FirstSheet(printed))) > AlmostFull * PrintedHeight.Sheet
        )
            printed--;
        return printed;
    }

    private IEnumerable<Block> FirstSheet(int printed)
    {
        if (!report.Causes.IsEmpty)
        {
            yield return new Heading("Work, the most dangerous first");
            yield return new WorkList(report.Causes) { Items = Work, PrintedItems = printed };
            if (printed < Work.Length)
                yield return new PrintOnly([
                    new Paragraph($"Work {printed + 1} to {Work.Length}: after the drawing."),
                ]);
            if (plan is not null)
                yield return new Paragraph($"Fuse plan, {FusePlanDocument.Remedy(plan)}");
        }

        foreach (Block block in Below)
            yield return block;
    }

    private static LineChart? Plot(BikeReport report) =>
        report.DirectLighting is { } direct ? DirectLightingDocument.Chart(direct)
        : report.Engine is { } engine ? EngineBlocks.LightAndCharging(engine, report.Bike)
        : null;

    private static IEnumerable<Block> Disagreements(BikeReport report)
    {
        Finding[] findings = [.. report.Findings.Where(f => s_disagreements.Contains(f.Kind))];
        if (findings.Length == 0)
            yield break;
        yield return new Heading("Your lists disagree");
        yield return new OpeningLines([.. findings.Select(Line)]);
    }

    private static (string Line, string? More) Line(Finding finding)
    {
        string names = string.Join(", ", finding.Parts.Prepend(finding.Subject));
        return finding.Kind switch
        {
            FindingKind.LampDark => ($"{names}: 'lit when' says lit, the wiring leaves it dark.", finding.Message),
            FindingKind.LampFedUnintended => (
                $"{names}: 'lit when' says dark, the wiring feeds it.",
                finding.Message
            ),
            _ => ($"{finding.Subject}: {finding.Message}", null),
        };
    }

    private static IEnumerable<Block> Fuses(BikeReport report, SettingLegend legend)
    {
        if (report.Fuses.IsEmpty)
            yield break;
        yield return new Heading("Fuses");
        yield return CommonBlocks.FuseTable(report.Fuses, legend);
        yield return ReportCharts.Fuses(report.Fuses);
    }

    private static IEnumerable<Block> Lamps(BikeReport report, SettingLegend legend)
    {
        yield return new Heading($"Lamps{CommonBlocks.At(report)}, each in its worst lasting setting");
        var lamp = new Columns<VoltageDropBreakdown>
        {
            {
                CommonBlocks.Lamp.Only("lamp", "voltageV", "currentA", "powerW", "relativeLight"),
                d => d.Lamp
            },
            { "drop %", "dropPercent", d => ((Cell)d.Lamp.Drop).Beyond(IsBeyond(report, d)) },
            {
                "limit %",
                "limitPercent",
                d => report.Bike.HasNetwork ? (Cell)Limit(report, d).Share : Figures.Right("-")
            },
            { "supply V", "supplyVoltageV", d => d.SupplyVoltage },
            { "setting", "setting", d => d.Setting },
        };
        yield return legend.In(lamp.Table(report.WorstDrops));
        yield return new ScreenOnly([
            new SideBySide([ReportCharts.LampVolts(report), ReportCharts.LampLight(report)]),
        ]);
        if (report.Bike.HasNetwork && !report.WorstDrops.IsEmpty)
        {
            yield return new Heading("Voltage-drop breakdown, each lamp in its worst lasting setting");
            yield return ReportCharts.Breakdowns(report);
            yield return DropDocument
                .Breakdowns(report)
                .Table(report.WorstDrops.OrderByDescending(d => d.TotalDrop.Volts));
        }
    }

    private static IEnumerable<Block> Charging(BikeReport report, SettingLegend legend)
    {
        Block[] load =
        [
            new Heading(
                $"Heaviest load ({legend.Of(report.Heaviest.Setting)}): "
                    + Figures.Amperes(report.Heaviest.TotalCurrent)
            ),
            CircuitLoad.Columns.Table(CircuitLoad.Of(report.Heaviest)),
        ];
        if (CheckDocument.Charging(report) is not { } charging)
        {
            foreach (Block block in load)
                yield return block;
            yield break;
        }

        yield return new SideBySide([
            new SideBySide(load),
            new SideBySide([new Heading("Charging"), new Paragraph(charging)]),
        ])
        {
            IsFirstNarrow = true,
        };
        EngineReport? engine = report.Engine;
        foreach (Block block in engine is null ? [] : EngineBlocks.Table(engine, report.Bike))
            yield return block;
        LineChart? volts = engine is null ? null : EngineBlocks.VoltageChart(engine, report.Bike),
            balance = ChargingCharts.Balance(ChargingSystem.Of(report.Bike), report.Charging!, s => legend.Of(s)),
            charge = report.Charging!.Ride is { } ridden ? ChargingCharts.Ride(ridden) : null;
        // The table has the voltage too.
        if (volts is not null)
            yield return new ScreenOnly([volts]);
        foreach (Block block in engine is null ? [] : EngineBlocks.RegulatorTable(engine))
            yield return block;
        foreach (Block block in report.Charging.Ride is { } ride ? ChargingDocument.RideTable(ride) : [])
            yield return block;
        if (balance is not null || charge is not null)
            yield return new SideBySide([.. new[] { balance, charge }.OfType<Block>()]);
    }

    private static DropLimit Limit(BikeReport report, VoltageDropBreakdown drop) =>
        DropLimit.Of(report.Bike, drop.Lamp.Lamp, drop.SupplyVoltage);

    private static bool IsBeyond(BikeReport report, VoltageDropBreakdown drop) =>
        report.Bike.HasNetwork
        && Limit(report, drop) is { IsAdvice: false } limit
        && limit.IsExceededBy(drop.Lamp.Drop!.Value);
}
