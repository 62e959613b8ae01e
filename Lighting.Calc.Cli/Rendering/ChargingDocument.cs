using Lighting.Calc.Charging;
using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What <c>charging</c> prints: break-even of each setting, the balance over engine speed, the ride, standing times.</summary>
internal static class ChargingDocument
{
    private const int MostLines = 8;

    public static Document Of(ChargingSystem system, ChargingReport report)
    {
        ChargingBalance worst = report.Worst!, shown = report.Typical ?? worst;
        // Settings of one load make one line.
        ChargingBalance[] lines = [.. report.Balances.OrderByDescending(b => b.Load.Amperes).DistinctBy(b => Math.Round(b.Load.Amperes, 3)).Take(MostLines)];
        var legend = new SettingLegend();
        return new Document(
            CommonBlocks.TitleOf(system.Bike, "Charging"),
            $"The setting that wants most takes {Figures.Amperes(worst.Demand)} on average ({worst.Setting}); it is covered {BreakEvenWords.Of(worst.BreakEven)}."
            + (report.Typical is { } typical ? $"\nThe usual setting of the ride takes {Figures.Amperes(typical.Demand)} ({typical.Setting}); it is covered {BreakEvenWords.Of(typical.BreakEven)}." : ""),
            [
                new Heading("Average load and break-even"),
                BreakEvens(lines, legend),
                legend.Block,
                .. Fits(system),
                new Heading($"Amps into the battery over engine speed ({shown.Setting})"),
                Balance(shown, system.Grid()),
                .. ChargingCharts.Balance(system, report) is { } chart ? [new PageOnly(chart)] : Array.Empty<Block>(),
                new SpreadsheetOnly(Series(system, report)),
                .. report.Ride is { } ride ? RideBlocks(ride) : [],
                new Heading($"Standing with the engine off, from {Figures.Percent(system.Options.InitialStateOfCharge)} (Peukert, exponent {Figures.Number(system.Options.PeukertExponent, 2)})"),
                Standing(report),
                .. CommonBlocks.FindingBlocks([.. report.Findings.Where(f => f.Severity != Severity.Note)]),
                CommonBlocks.Safety,
            ]);
    }

    private static Table BreakEvens(IEnumerable<ChargingBalance> balances, SettingLegend legend) => new(
        [new("average A", "demandA", true), new("covered", "breakEven"), new("setting", "setting")],
        [.. balances.Select(b => (IReadOnlyList<Cell>)[Figures.Cell(b.Demand), BreakEvenWords.Of(b.BreakEven), legend.Of(b.Setting)])]);

    private static IEnumerable<Block> Fits(ChargingSystem system)
    {
        foreach (PermanentMagnetFit fit in system.Machines)
            yield return Residuals($"Fitted machine: {Figures.Amperes(fit.Machine.MaximumCurrent)} at most, {Figures.Rpm(fit.Machine.CornerSpeed)} corner speed", fit.Residuals);
        foreach (AlternatingSourceFit fit in system.Coils)
            yield return Residuals($"Fitted coil: {Figures.Amperes(fit.Source.MaximumCurrent)} at most", fit.Residuals);
    }

    private static Paragraph Residuals(string title, IEnumerable<FitResidual> residuals) =>
        new($"{title}. Residuals: {string.Join(", ", residuals.Select(r => $"{Figures.Rpm(r.Point.Speed)} {Figures.Number(r.Residual.Amperes, 2)} A"))}.");

    private static Table Balance(ChargingBalance balance, IEnumerable<RotationalSpeed> grid) => new(
        [new("rpm", "rpm", true), new("output A", "outputA", true), new("net A", "netA", true), new("", "bar", IsTextBar: true)],
        [.. balance.Over(grid).Select(p => (IReadOnlyList<Cell>)[Figures.Cell(p.Speed.RevolutionsPerMinute, 0), Amperes(p.Output.Current), Amperes(p.Net), Bar(p)])]);

    private static Table Series(ChargingSystem system, ChargingReport report) => new(
        [new("setting", "setting"), new("rpm", "rpm", true), new("output A", "outputA", true), new("demand A", "demandA", true), new("net A", "netA", true)],
        [
            .. report.Balances.SelectMany(b => b.Over(system.Grid()).Select(p => (IReadOnlyList<Cell>)
                [b.Setting.ToString(), Figures.Cell(p.Speed.RevolutionsPerMinute, 0), Amperes(p.Output.Current), Figures.Cell(b.Demand), Amperes(p.Net)])),
        ],
        IsMain: true);

    /// <summary>The ride, stretch by stretch.</summary>
    public static Block[] RideBlocks(RideBalance ride) =>
    [
        new Heading($"Ride of {Figures.Number(ride.Duration.Minutes, 0)} min: {Net(ride.NetCharge)}"),
        new Table(
            [
                new("stretch", "stretch"), new("minutes", "minutes", true), new("rpm", "rpm", true), new("demand A", "demandA", true), new("output A", "outputA", true),
                new("net Ah", "netAmpereHours", true), new("charge %", "stateOfChargePercent", true),
            ],
            [
                .. ride.Stretches.Select(s => (IReadOnlyList<Cell>)
                [
                    s.Stretch.Stretch, Figures.Cell(s.Stretch.Duration.Minutes, 0), Figures.Cell(s.Stretch.Speed.RevolutionsPerMinute, 0), Figures.Cell(s.Demand), Amperes(s.Output.Current),
                    s.NetCharge is { } net ? Figures.Cell(net.AmpereHours, 2) : "-", Figures.Percentage(s.StateOfCharge),
                ]),
            ]),
        .. ChargingCharts.Ride(ride) is { } chart ? [new PageOnly(chart)] : Array.Empty<Block>(),
    ];

    private static Table Standing(ChargingReport report) => new(
        [new("load A", "loadA", true), new("to 50 %", "toHalfHours", true), new("to no start", "toNoStartHours", true), new("setting", "setting")],
        [
            .. report.Standing.Chunk(2).Select(pair => (IReadOnlyList<Cell>)[Figures.Cell(pair[0].Load), Hours(pair[0]), Hours(pair[1]), pair[0].Setting.ToString()]),
        ]);

    private static string Hours(StandingTime standing) => standing.Outcome switch
    {
        StandingOutcome.Reached => $"{Figures.Number(standing.Time!.Value.Hours, 1)} h",
        StandingOutcome.AlreadyThere => "there already",
        StandingOutcome.NoLoad => "never",
        StandingOutcome.CapacityNotKnown => "capacity not listed",
        _ => throw new InvalidOperationException($"Unknown outcome {standing.Outcome}."),
    };

    private static string Net(ElectricCharge? net) => net is { } known ? $"{Figures.Number(known.AmpereHours, 2)} Ah net" : "net not known, the curve does not reach";

    private static Cell Amperes(ElectricCurrent? value) => value is { } known ? Figures.Cell(known) : new Cell("-", "");

    // One mark for each half amp into (+) or out of (-) the battery.
    private static Cell Bar(BalancePoint point)
    {
        if (point.Net is not { } net)
            return "";
        int marks = Math.Min(30, (int)Math.Round(Math.Abs(net.Amperes) * 2));
        return new string(net.Amperes < 0 ? '-' : '+', marks);
    }
}
