using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The charts of a check: fuses, lamps and where the volts are lost.</summary>
internal static class ReportCharts
{
    private static readonly VoltageDropKind[] Way =
        [VoltageDropKind.Battery, VoltageDropKind.Fuse, VoltageDropKind.Switch, VoltageDropKind.FeedWire, VoltageDropKind.FeedJoint, VoltageDropKind.ReturnWire, VoltageDropKind.ReturnJoint];

    /// <summary>Each fuse's worst current against its steady limit and its rating.</summary>
    public static BarChart Fuses(IEnumerable<FuseSuitability> fuses) => new(
        "Worst current of each fuse",
        ["steady limit", "rating"],
        [
            .. fuses.Select(f => new Bar(
                f.Fuse.Name,
                f.Steady.WorstCurrent.Amperes,
                $"{Figures.Amperes(f.Steady.WorstCurrent)} of {Figures.Amperes(f.Steady.UsableCurrent)} usable, rated {Figures.Rating(f.Fuse.Rating)}: {f.VerdictText}",
                [f.Steady.UsableCurrent.Amperes, f.Fuse.Rating.Amperes])),
        ]);

    /// <summary>Each lamp's volts in its worst setting against its reference volts and the source.</summary>
    public static BarChart LampVolts(BikeReport report) => new(
        "Volts at each lamp in its worst setting",
        ["the lamp's own reference volts", "source"],
        [
            .. report.WorstDrops.Select(d => new Bar(
                d.Lamp.Lamp.Lamp,
                Math.Max(0, d.Lamp.Voltage.Volts),
                HasReference(d.Lamp) ? $"{Figures.Volts(d.Lamp.Voltage)}, made for {Figures.Volts(d.Lamp.Lamp.Specification.ReferenceVoltage)}" : Figures.Volts(d.Lamp.Voltage),
                [HasReference(d.Lamp) ? d.Lamp.Lamp.Specification.ReferenceVoltage.Volts : null, report.SupplyVoltage.Volts])),
        ]);

    /// <summary>Each lamp's light in its worst setting against its published light.</summary>
    public static BarChart LampLight(BikeReport report) => new(
        "Light of each lamp in its worst setting",
        ["light at the voltage of the lamp's published lumens (100 %)"],
        [
            .. report.WorstDrops.Where(d => d.Lamp.PublishedLight is not null).Select(d => new Bar(
                d.Lamp.Lamp.Lamp, d.Lamp.PublishedLight!.Value.Percent, Figures.Percent(d.Lamp.PublishedLight.Value), [100])),
        ]);

    /// <summary>The ledger of each lamp, from the source to it and back, on a scale on which losses can be seen.</summary>
    public static StackedBarChart Ledgers(BikeReport report)
    {
        // Where lamps have different limits, the smallest.
        Ratio share = Ratio.FromDecimalFractions(report.WorstDrops.Select(d => DropLimit.Of(report.Bike, d.Lamp.Lamp, d.SupplyVoltage).Share.DecimalFractions).DefaultIfEmpty(report.Bike.AllowedDrop.DecimalFractions).Min());
        ElectricPotential allowed = report.SupplyVoltage * share.DecimalFractions;
        return new StackedBarChart(
            "Volts lost on the way from the source to each lamp and back",
            [.. Way.Select(DropWords.Of)],
            [
                .. report.WorstDrops.OrderByDescending(d => d.TotalDrop.Volts).Select(d => new StackedBar(
                    d.Lamp.Lamp.Lamp,
                    $"{Figures.Volts(d.TotalDrop)} of {Figures.Volts(d.SupplyVoltage)} lost ({Figures.Percent(d.Lamp.Drop!.Value)}), {Figures.Volts(d.Lamp.Voltage)} left",
                    [.. Way.Select(k => d.DropIn(k).Volts)],
                    [.. Way.Select(k => Figures.Volts(d.DropIn(k)))])),
            ],
            allowed.Volts,
            $"allowed: {Figures.Percent(share)}, {Figures.Volts(allowed)}");
    }

    /// <summary>Each circuit's amps after a swap against those before it.</summary>
    public static BarChart Circuits(SwapReport report) => new(
        "Amps of each circuit after the swap",
        ["before it"],
        [
            .. report.Circuits.Select(c => new Bar(
                c.Circuit, Math.Max(0, c.CurrentAfter.Amperes), $"{Figures.Amperes(c.CurrentBefore)} before, {Figures.Amperes(c.CurrentAfter)} after", [c.CurrentBefore.Amperes])),
        ]);

    private static bool HasReference(LampState lamp) => lamp.Lamp.Specification.Type is not LampType.Fixed;
}
