using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The charts of a check: fuses, lamps and voltage drop.</summary>
internal static class ReportCharts
{
    private static readonly VoltageDropKind[] s_way =
    [
        VoltageDropKind.Battery,
        VoltageDropKind.Fuse,
        VoltageDropKind.Switch,
        VoltageDropKind.FeedWire,
        VoltageDropKind.FeedJoint,
        VoltageDropKind.ReturnWire,
        VoltageDropKind.ReturnJoint,
    ];

    /// <summary>Each fuse's continuous load against its continuous limit and its rating.</summary>
    public static BarChart Fuses(IEnumerable<FuseSuitability> fuses) =>
        new(
            "Continuous load of each fuse",
            ["continuous limit", "rating"],
            [
                .. fuses.Select(f => new Bar(
                    f.Fuse.Name,
                    f.Steady.ContinuousCurrent.Amperes,
                    $"{Figures.Amperes(f.Steady.ContinuousCurrent)} of {Figures.Amperes(f.Steady.UsableCurrent)} "
                        + $"continuous limit, {Figures.Amperes(f.Steady.WorstCurrent)} peak, rated "
                        + $"{Figures.Rating(f.Fuse.Rating)}: {f.VerdictText}",
                    [f.Steady.UsableCurrent.Amperes, f.Fuse.Rating.Amperes]
                )
                {
                    Limit = f.Steady.UsableCurrent.Amperes,
                }),
            ]
        );

    /// <summary>Each lamp's voltage in its worst setting against its rated voltage and the source.</summary>
    public static BarChart LampVolts(BikeReport report) =>
        new(
            "Voltage at each lamp in its worst lasting setting",
            ["rated voltage", "source"],
            [
                .. report.WorstDrops.Select(d => new Bar(
                    d.Lamp.Lamp.Lamp,
                    Math.Max(0, d.Lamp.Voltage.Volts),
                    HasReference(d.Lamp)
                        ? $"{Figures.Volts(d.Lamp.Voltage)}, rated "
                            + $"{Figures.Volts(d.Lamp.Lamp.Specification.ReferenceVoltage)}"
                        : Figures.Volts(d.Lamp.Voltage),
                    [
                        HasReference(d.Lamp) ? d.Lamp.Lamp.Specification.ReferenceVoltage.Volts : null,
                        d.SupplyVoltage.Volts,
                    ]
                )),
            ]
        );

    /// <summary>Each lamp's light in its worst setting against its published light.</summary>
    public static BarChart LampLight(BikeReport report) =>
        new(
            "Light of each lamp in its worst lasting setting",
            ["light at the voltage of the lamp's published lumens (100 %)"],
            [
                .. report
                    .WorstDrops.Where(d => d.Lamp.PublishedLight is not null)
                    .Select(d => new Bar(
                        d.Lamp.Lamp.Lamp,
                        d.Lamp.PublishedLight!.Value.Percent,
                        Figures.Percent(d.Lamp.PublishedLight.Value),
                        [100]
                    )),
            ]
        );

    /// <summary>The voltage drop of each lamp by kind of part, on a scale on which it can be seen.</summary>
    public static StackedBarChart Breakdowns(BikeReport report)
    {
        // Where lamps have different limits, the smallest.
        Ratio share = Ratio.FromDecimalFractions(
            report
                .WorstDrops.Select(d => DropLimit.Of(report.Bike, d.Lamp.Lamp, d.SupplyVoltage).Share.DecimalFractions)
                .DefaultIfEmpty(report.Bike.AllowedDrop.DecimalFractions)
                .Min()
        );
        ElectricPotential allowed = report.SupplyVoltage * share.DecimalFractions;
        return new StackedBarChart(
            "Voltage drop from the source to each lamp and back",
            [.. s_way.Select(DropWords.Of)],
            [
                .. report
                    .WorstDrops.OrderByDescending(d => d.TotalDrop.Volts)
                    .Select(d => new StackedBar(
                        d.Lamp.Lamp.Lamp,
                        $"{Figures.Volts(d.TotalDrop)} of {Figures.Volts(d.SupplyVoltage)} dropped "
                            + $"({Figures.Percent(d.Lamp.Drop!.Value)}), {Figures.Volts(d.Lamp.Voltage)} at the lamp",
                        [.. s_way.Select(k => d.DropIn(k).Volts)],
                        [.. s_way.Select(k => Figures.Volts(d.DropIn(k)))]
                    )),
            ],
            allowed.Volts,
            $"limit: {Figures.Percent(share)}, {Figures.Volts(allowed)}"
        );
    }

    /// <summary>Each circuit's current after a swap against those before it.</summary>
    public static BarChart Circuits(SwapReport report) =>
        new(
            "Current of each circuit after the swap",
            ["before the swap"],
            [
                .. report.Comparison.Circuits.Select(c => new Bar(
                    c.Circuit,
                    Math.Max(0, c.CurrentAfter.Amperes),
                    $"{Figures.Amperes(c.CurrentBefore)} before, {Figures.Amperes(c.CurrentAfter)} after",
                    [c.CurrentBefore.Amperes]
                )),
            ]
        );

    private static bool HasReference(LampState lamp) => lamp.Lamp.Specification.Type is not LampType.Fixed;
}
