namespace Lighting.Calc.Cli.Rendering;

/// <summary>One of many bikes in a row; null where something does not apply or was not found.</summary>
internal sealed record FleetRow
{
    public required string Folder { get; init; }

    public required FleetOutcome Outcome { get; init; }

    /// <summary>What was wrong with its lists; of a bike that was checked its gravest fault, if any.</summary>
    public required IReadOnlyList<string> Messages { get; init; }

    /// <summary>The gravest cause in a line.</summary>
    public string? Cause { get; init; }

    public string Bike { get; init; } = "";

    public int Faults { get; init; }

    /// <summary>Cautions of the check.</summary>
    public int Cautions { get; init; }

    /// <summary>Cautions of the reading of its lists.</summary>
    public int ListCautions { get; init; }

    public double? TotalAmperes { get; init; }

    /// <summary>The fuse that is worst off.</summary>
    public string? Fuse { get; init; }

    public string? FuseVerdict { get; init; }

    public double? RatingAmperes { get; init; }

    public double? ContinuousAmperes { get; init; }

    public double? UsableAmperes { get; init; }

    public double? SmallestAmperes { get; init; }

    public double? LargestAmperes { get; init; }

    /// <summary>The lamp that loses the greatest share of its voltage.</summary>
    public string? Lamp { get; init; }

    public double? LampVolts { get; init; }

    public double? DropPercent { get; init; }

    /// <summary>What that lamp may lose.</summary>
    public double? AllowedDropPercent { get; init; }

    public double? BreakEvenRpm { get; init; }

    public double? NetAmpereHours { get; init; }

    public bool IsChecked => Outcome is FleetOutcome.Suits or FleetOutcome.DoesNotSuit or FleetOutcome.NotJudged;

    public static FleetRow NotChecked(string folder, FleetOutcome outcome, IReadOnlyList<string> messages) =>
        new()
        {
            Folder = folder,
            Outcome = outcome,
            Messages = messages,
        };

    /// <summary>A row without its report, of which many rows that wait for their turn would keep too much.</summary>
    /// <param name="folder">Where its lists are.</param>
    /// <param name="report">Its check.</param>
    /// <param name="listCautions">Cautions of the reading of its lists.</param>
    /// <param name="hasCause">Whether the words of its gravest cause are wanted.</param>
    public static FleetRow Of(string folder, BikeReport report, int listCautions, bool hasCause)
    {
        FuseSuitability? fuse = report.Fuses.MinBy(f =>
            (f.Verdict == Lighting.Calc.FuseVerdict.Suits, f.Steady.Headroom.Amperes / f.Steady.UsableCurrent.Amperes)
        );
        VoltageDropBreakdown? drop = report.Bike.HasNetwork
            ? report.WorstDrops.MaxBy(d => d.Lamp.Drop!.Value.DecimalFractions)
            : null;
        Finding? gravest = report.Findings.FirstOrDefault(f => f.Severity == Severity.Fault);
        return new FleetRow
        {
            Folder = folder,
            Outcome = report.Verdict switch
            {
                BikeVerdict.Suits => FleetOutcome.Suits,
                BikeVerdict.NotJudged => FleetOutcome.NotJudged,
                _ => FleetOutcome.DoesNotSuit,
            },
            Messages = gravest is null ? report.NotJudged : [$"{gravest.Subject}: {gravest.Message}"],
            Cause = hasCause ? report.Causes.FirstOrDefault()?.Text : null,
            Bike = report.Bike.Name,
            Faults = report.Findings.Count(f => f.Severity == Severity.Fault),
            Cautions = report.Findings.Count(f => f.Severity == Severity.Caution),
            ListCautions = listCautions,
            TotalAmperes = report.Heaviest.TotalCurrent.Amperes,
            Fuse = fuse?.Fuse.Name,
            FuseVerdict = fuse?.VerdictText,
            RatingAmperes = fuse?.Fuse.Rating.Amperes,
            ContinuousAmperes = fuse?.Steady.ContinuousCurrent.Amperes,
            UsableAmperes = fuse?.Steady.UsableCurrent.Amperes,
            SmallestAmperes = fuse?.Advice.Smallest?.Amperes,
            LargestAmperes = fuse?.Advice.Largest?.Amperes,
            Lamp = drop?.Lamp.Lamp.Lamp,
            LampVolts = drop?.Lamp.Voltage.Volts,
            DropPercent = drop?.Lamp.Drop?.Percent,
            AllowedDropPercent = drop is null
                ? null
                : DropLimit.Of(report.Bike, drop.Lamp.Lamp, drop.SupplyVoltage).Share.Percent,
            BreakEvenRpm = report.Charging?.Worst?.BreakEven.Speed?.RevolutionsPerMinute,
            NetAmpereHours = report.Charging?.Ride?.NetCharge?.AmpereHours,
        };
    }
}
