namespace Lighting.Calc.Cli.Rendering;

/// <summary>Blocks and columns that several documents share.</summary>
internal static class CommonBlocks
{
    /// <summary>A cell to be written in by hand.</summary>
    public const string Blank = "________";

    public static readonly Columns<Finding> Finding = new()
    {
        { "", "severity", f => SeverityWord(f.Severity) },
        { "kind", f => f.Code },
        { "about", "subject", f => f.Subject },
        { "finding", "message", f => f.Message },
    };

    public static readonly Columns<NodeVoltage> Point = new()
    {
        { "point", "point", p => p.Point },
        { "V", "voltageV", p => p.Voltage },
    };

    public static readonly Columns<LampState> Lamp = new()
    {
        { "lamp", "lamp", l => l.Lamp.Lamp },
        { "circuit", "circuit", l => l.Lamp.Circuit },
        { "quantity", "quantity", l => l.Lamp.Quantity },
        { "V", "voltageV", l => l.Voltage },
        { "A", "currentA", l => l.Current },
        { "W", "powerW", l => l.Power },
        { "light %", "relativeLight", l => Light(l) },
        { "drop %", "dropPercent", l => l.Drop },
    };

    public static readonly Columns<FuseSuitability> Fuse = new()
    {
        { "fuse", "fuse", f => f.Fuse.Name },
        { "rating A", "ratingA", f => f.Fuse.Rating, Figures.Rated },
        {
            "cont. A",
            "continuousCurrentA",
            f =>
                ((Cell)f.Steady.ContinuousCurrent).Beyond(
                    f.Steady.ContinuousCurrent.Amperes > f.Steady.UsableCurrent.Amperes + 1e-9
                )
        },
        { "limit A", "usableA", f => f.Steady.UsableCurrent },
        { "continuous setting", "continuousSetting", f => f.Steady.ContinuousSetting },
        {
            "peak A",
            "worstCurrentA",
            f =>
                ((Cell)f.Steady.WorstCurrent).Beyond(
                    f.Steady.WorstCurrent.Amperes > f.Steady.PeakLimit.Amperes + 1e-9
                )
        },
        { "peak limit A", "peakLimitA", f => f.Steady.PeakLimit },
        { "at peak", "worstSetting", f => f.Steady.WorstSetting },
        { "worstRpm", f => f.Steady.WorstSpeed },
        { "verdict", "verdict", f => f.VerdictText },
        { "least A", "smallestRatingA", f => f.Advice.Smallest, Figures.Rated },
        { "most A", "largestRatingA", f => f.Advice.Largest, Figures.Rated },
        { "momentaryLoads", f => f.Steady.MomentaryLoads },
        { "reasons", f => f.Reasons },
    };

    /// <summary>A headline that says so where only some settings were looked at.</summary>
    public static string Within(Condition when, string headline) =>
        when.Terms.IsEmpty ? headline : $"Only with '{when}', no other setting judged:\n{headline}";

    /// <summary>Light against that at the lumen test voltage, in percent; unknown of an LED whose light is not
    /// published.</summary>
    public static Cell Light(LampState? lamp) =>
        lamp is { PublishedLight: null, RelativeLight: not null }
            ? Figures.Right("unknown") with
            {
                Value = null,
            }
            : lamp?.PublishedLight;

    /// <summary>The voltage that a report's figures rest on, for a heading.</summary>
    public static string At(BikeReport report)
    {
        OperatingPoint highest = report.Settings.MaxBy(p => p.SupplyVoltage.Volts)!;
        return highest.Bus is null
            ? $" at {Figures.Volts(report.SupplyVoltage)}"
            : $", engine running (up to {Figures.Volts(highest.SupplyVoltage)})";
    }

    /// <summary>Where the source is, engine running.</summary>
    public static string BusOf(Bike bike) =>
        bike.GeneratorPoint is { } point ? $"'{point}', where the generator joins," : "the battery's terminals";

    public static string TitleOf(Bike bike, string what) => bike.Name.Length == 0 ? what : $"{what}: {bike.Name}";

    public static Table FuseTable(IEnumerable<FuseSuitability> fuses, SettingLegend legend) =>
        legend.In(
            Fuse.Only(
                    "fuse",
                    "ratingA",
                    "continuousCurrentA",
                    "usableA",
                    "worstCurrentA",
                    "verdict",
                    "smallestRatingA",
                    "largestRatingA",
                    "worstSetting"
                )
                .Table(fuses)
        );

    /// <summary>As what kinds of cable the wires of a bike are rated; nothing where it lists none.</summary>
    public static IEnumerable<Block> RatedAs(Bike bike)
    {
        string[] kinds =
        [
            .. bike.Runs.CountBy(r => KindWords(r.Cable ?? bike.Cable, r.Wire.Construction))
                .Select(k => $"{k.Key} ({k.Value} of {bike.Runs.Length})"),
        ];
        if (kinds.Length > 0)
            yield return new Paragraph($"Wires are rated {string.Join(", ", kinds)}.");
    }

    /// <summary>A kind of cable as lists write it; null where it is not stated.</summary>
    public static string? CableWord(CableKind? cable) =>
        cable switch
        {
            CableKind.Ordinary => "ordinary",
            CableKind.ThinWall => "thin wall",
            CableKind.FreeAir => "free air",
            _ => null,
        };

    private static string KindWords(CableKind? kind, WireConstruction construction) =>
        kind switch
        {
            CableKind.Ordinary => "as ordinary PVC cable",
            CableKind.ThinWall => "as thin-wall cable",
            CableKind.FreeAir => "in free air",
            _ when construction == WireConstruction.InchStrands => "as old inch cable, no kind of cable being stated",
            _ => "in free air, no kind of cable being stated",
        };

    public static IEnumerable<Block> FindingBlocks(IReadOnlyCollection<Finding> findings) =>
        findings.Count == 0 ? [] : [new Heading("Findings"), Finding.Table(findings)];

    private static string SeverityWord(Severity severity) =>
        severity switch
        {
            Severity.Note => "note",
            Severity.Caution => "caution",
            Severity.Fault => "fault",
            _ => throw new InvalidOperationException($"Unknown severity {severity}."),
        };
}
