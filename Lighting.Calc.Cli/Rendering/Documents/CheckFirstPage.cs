namespace Lighting.Calc.Cli.Rendering;

/// <summary>What a customer reads of a check at the top of its page: three figures with their limits.</summary>
internal static class CheckFirstPage
{
    /// <summary>What a workshop writes in.</summary>
    public static readonly string[] Fields = ["Workshop", "Customer", "Mileage", "Date", "Signature"];

    /// <summary>The most loaded fuse, the lamp with the largest drop, and the speed from which charging covers the
    /// usual ride.</summary>
    public static IEnumerable<Block> Of(BikeReport report) =>
        [new KeyFigures([.. new[] { Fuse(report), Drop(report), Charging(report) }.OfType<KeyFigure>()])];

    // A lighting coil has no fuse to judge.
    private static KeyFigure? Fuse(BikeReport report) =>
        report
            .Fuses.OrderBy(f => f.Verdict == FuseVerdict.Suits)
            .ThenBy(f => f.Steady.Headroom.Amperes)
            .FirstOrDefault()
            is { } fuse
            ? new KeyFigure(
                $"Fuse: {fuse.Fuse.Name} {Figures.Rating(fuse.Fuse.Rating)}",
                Figures.Amperes(fuse.Steady.ContinuousCurrent),
                $"continuous, limit {Figures.Amperes(fuse.Steady.UsableCurrent)}",
                fuse.Verdict switch
                {
                    FuseVerdict.Suits => BikeVerdict.Suits,
                    FuseVerdict.NotJudged => BikeVerdict.NotJudged,
                    _ => BikeVerdict.DoesNotSuit,
                }
            )
        : report.DirectLighting is not null ? null
        : new KeyFigure(
            "Fuse",
            Figures.Amperes(report.Heaviest.TotalCurrent),
            "in the heaviest setting, no fuse listed",
            BikeVerdict.NotJudged
        );

    private static KeyFigure Drop(BikeReport report)
    {
        HashSet<string> tooLarge =
        [
            .. report
                .Causes.SelectMany(c => c.Findings)
                .Where(f => f.Kind == FindingKind.VoltageDropTooLarge)
                .SelectMany(f => f.Parts.Prepend(f.Subject)),
        ];
        VoltageDropBreakdown[] lamps = report.Bike.HasNetwork ? [.. report.WorstDrops] : [];
        if (tooLarge.Count > 0)
            lamps = [.. lamps.Where(d => tooLarge.Contains(d.Lamp.Lamp.Lamp))];
        else
            lamps = [.. lamps.Where(d => !Limit(d).IsExceededBy(d.Lamp.Drop!.Value))];
        return lamps.MaxBy(d => d.Lamp.Drop!.Value.Percent / Limit(d).Share.Percent) is { } worst
            ? new KeyFigure(
                $"Largest voltage drop: {worst.Lamp.Lamp.Lamp}",
                Figures.Volts(worst.Lamp.Voltage),
                $"{Figures.Percent(worst.Lamp.Drop!.Value)} lost, limit "
                    + Figures.Percent(Limit(worst).Share),
                tooLarge.Count > 0 ? BikeVerdict.DoesNotSuit : BikeVerdict.Suits
            )
            : new KeyFigure("Largest voltage drop", "unknown", "no wires listed", BikeVerdict.NotJudged);

        DropLimit Limit(VoltageDropBreakdown drop) => DropLimit.Of(report.Bike, drop.Lamp.Lamp, drop.SupplyVoltage);
    }

    private static KeyFigure? Charging(BikeReport report)
    {
        if (report.DirectLighting is not null)
            return null;
        const string Title = "Charging covers the usual ride from";
        ChargingReport? charging = report.Charging;
        if ((charging?.Typical ?? charging?.Worst) is not { } usual)
            return new KeyFigure(Title, "unknown", "no charging list", BikeVerdict.NotJudged);
        BreakEven even = usual.BreakEven;
        string worst =
            charging!.Worst is { BreakEven.Speed: { } speed } heaviest && heaviest != usual
                ? $"heaviest setting from {Figures.Rpm(speed)}"
                : "";
        return even.Outcome switch
        {
            BreakEvenOutcome.At or BreakEvenOutcome.BelowCurve => new KeyFigure(
                Title,
                Figures.Rpm(even.Speed!.Value),
                even.Outcome == BreakEvenOutcome.BelowCurve ? "or below, the list starts there" : worst,
                BikeVerdict.Suits
            ),
            BreakEvenOutcome.Always => new KeyFigure(Title, "any speed", worst, BikeVerdict.Suits),
            BreakEvenOutcome.Never => new KeyFigure(
                Title,
                "no listed speed",
                $"{Figures.Amperes(usual.Demand)} needed",
                BikeVerdict.DoesNotSuit
            ),
            _ => new KeyFigure(Title, "unknown", "outside the charging list", BikeVerdict.NotJudged),
        };
    }
}
