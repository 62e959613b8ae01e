namespace Lighting.Calc.Cli.Rendering;

/// <summary>What a customer reads of a check first: three figures with their limits.</summary>
internal static class CheckFigures
{
    /// <summary>The fuse that is worst off, the lamp with the largest drop, and the speed from which charging covers
    /// the usual ride.</summary>
    public static KeyFigures Of(BikeReport report) =>
        new([.. new[] { Fuse(report), Drop(report), Charging(report) }.OfType<KeyFigure>()]);

    // A lighting coil has no fuse to judge.
    private static KeyFigure? Fuse(BikeReport report) =>
        report
            .Fuses.OrderBy(f => f.Verdict == FuseVerdict.Suits)
            .ThenBy(f => f.Steady.Headroom.Amperes)
            .FirstOrDefault()
            is { } fuse
            ? Worst(fuse)
        : report.DirectLighting is not null ? null
        : new KeyFigure(
            "Fuse",
            Figures.Amperes(report.Heaviest.TotalCurrent),
            "in the heaviest setting, no fuse listed",
            BikeVerdict.NotJudged
        );

    // The figure that decides: of a wire or a short the load says nothing.
    private static KeyFigure Worst(FuseSuitability fuse)
    {
        string title = $"Fuse: {fuse.Fuse.Name} {Figures.Rating(fuse.Fuse.Rating)}";
        ContinuousLoad load = fuse.Steady;
        string continuous =
            $"{Figures.Amperes(load.ContinuousCurrent)} continuous, limit {Figures.Amperes(load.UsableCurrent)}";
        return fuse.Verdict switch
        {
            FuseVerdict.TooLargeForTheWire => new KeyFigure(
                title,
                Figures.Rating(fuse.Fuse.Rating),
                fuse.Protection.LimitingRun is { Rating.Alone: { } rated, Run.Name: var run }
                    ? $"{run} is rated {Figures.Rating(rated)}; {continuous}"
                    : $"not every wire has a published rating; {continuous}",
                BikeVerdict.DoesNotSuit,
                "too large for the wiring"
            ),
            FuseVerdict.WillNotClear => new KeyFigure(
                title,
                fuse.Clearing.FirstOrDefault(c => c.Clears == false) is { ProspectiveCurrent: { } current } shorted
                    ? Figures.Amperes(current)
                    : Figures.Rating(fuse.Fuse.Rating),
                fuse.Clearing.FirstOrDefault(c => c.Clears == false) is { Run.Name: var end }
                    ? $"in a short at the end of {end}; {continuous}"
                    : continuous,
                BikeVerdict.DoesNotSuit,
                "does not clear a short"
            ),
            FuseVerdict.Overloaded when load.ContinuousCurrent <= load.UsableCurrent => load.PeakExceedsRating
                ? new KeyFigure(
                    title,
                    Figures.Amperes(load.WorstCurrent),
                    $"peak, limit {Figures.Amperes(load.PeakLimit)}; {continuous}",
                    BikeVerdict.DoesNotSuit,
                    "overloaded at the peak"
                )
                : new KeyFigure(
                    title,
                    fuse.InrushCheck is { } inrush ? Figures.Amperes(inrush.Peak) : Figures.Amperes(load.WorstCurrent),
                    $"inrush on switching on; {continuous}",
                    BikeVerdict.DoesNotSuit,
                    "may open on inrush"
                ),
            _ => new KeyFigure(
                title,
                Figures.Amperes(load.ContinuousCurrent),
                $"continuous, limit {Figures.Amperes(load.UsableCurrent)}",
                fuse.Verdict switch
                {
                    FuseVerdict.Suits => BikeVerdict.Suits,
                    FuseVerdict.NotJudged => BikeVerdict.NotJudged,
                    _ => BikeVerdict.DoesNotSuit,
                },
                fuse.Verdict == FuseVerdict.Overloaded ? "overloaded" : null
            ),
        };
    }

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
                $"{Figures.Percent(worst.Lamp.Drop!.Value)} lost, limit {Figures.Percent(Limit(worst).Share)}",
                tooLarge.Count > 0 ? BikeVerdict.DoesNotSuit : BikeVerdict.Suits,
                tooLarge.Count > 0 ? "too large" : null
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
        string worst = charging!.Worst is not { } heaviest || heaviest == usual ? ""
            : heaviest.BreakEven.Speed is { } speed ? $"heaviest setting from {Figures.Rpm(speed)}"
            : heaviest.BreakEven.Outcome == BreakEvenOutcome.Never ? "heaviest setting at no speed"
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
