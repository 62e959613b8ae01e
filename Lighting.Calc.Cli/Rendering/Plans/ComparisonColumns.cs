namespace Lighting.Calc.Cli.Rendering;

/// <summary>What is told of two bikes side by side, by <c>compare</c> and <c>swap</c> alike.</summary>
internal static class ComparisonColumns
{
    public static readonly Columns<LampChange> Lamp = new()
    {
        { "lamp", "lamp", l => new Cell(l.IsReplaced ? l.Lamp.Lamp : $"({l.Lamp.Lamp})", l.Lamp.Lamp) },
        { "circuit", l => l.Lamp.Circuit },
        { "quantity", l => l.Lamp.Quantity },
        { "replaced", l => l.IsReplaced },
        { "setting", "setting", l => l.Setting },
        { "V", "voltageV", l => l.Before?.Voltage, l => l.After?.Voltage },
        { "A", "currentA", l => l.Before?.Current, l => l.After?.Current },
        { "W", "powerW", l => l.Before?.Power, l => l.After?.Power },
        { "light %", "light", l => Figures.Right(Light(l)) },
        {
            "relativeLight",
            l => l.Before?.PublishedLight?.DecimalFractions,
            l => l.After?.PublishedLight?.DecimalFractions
        },
        { "lightLm", l => l.LightBefore?.Lumens, l => l.LightAfter?.Lumens },
        { "drop %", "dropPercent", l => l.Before?.Drop, l => l.After?.Drop },
    };

    public static readonly Columns<LampChange> LampSeries = Lamp.Only(
        "lamp",
        "circuit",
        "quantity",
        "replaced",
        "setting",
        "voltageV",
        "currentA",
        "powerW",
        "relativeLight",
        "lightLm",
        "dropPercent"
    );

    public static readonly Columns<CircuitChange> Circuit = new()
    {
        { "circuit", "circuit", c => c.Circuit },
        { "A", "currentA", c => c.CurrentBefore, c => c.CurrentAfter },
        { "W", "powerW", c => c.PowerBefore, c => c.PowerAfter },
    };

    private static readonly Columns<FuseSuitability> s_side = CommonBlocks.Fuse.Only(
        "worstCurrentA",
        "worstSetting",
        "verdict",
        "smallestRatingA",
        "largestRatingA"
    );

    public static readonly Columns<Change<FuseSuitability?>> Fuse = new()
    {
        { "fuse", "fuse", f => (f.After ?? f.Before)!.Fuse.Name },
        { "rating A", "ratingA", f => (f.After ?? f.Before)!.Fuse.Rating, Figures.Rated },
        { "before", s_side, f => f.Before },
        { "after", s_side, f => f.After },
        { "peak A", "", f => f.Before?.Steady.WorstCurrent, f => f.After?.Steady.WorstCurrent },
        { "before", "", f => f.Before?.VerdictText ?? "-" },
        { "after", "", f => f.After?.VerdictText ?? "-" },
        { "smallest A", "", f => f.After?.Advice.Smallest, Figures.Rated },
        { "largest A", "", f => f.After?.Advice.Largest, Figures.Rated },
    };

    private static string Light(LampChange change) =>
        change is { LightBefore: { } was, LightAfter: { } now }
            ? $"{Figures.Number(was.Lumens, 0)}" + $"→{Figures.Number(now.Lumens, 0)} lm"
        : change.Before?.RelativeLight is null && change.After?.RelativeLight is null ? "-"
        : $"{Percent(change.Before)}→{Percent(change.After)}";

    private static string Percent(LampState? lamp) =>
        lamp?.PublishedLight is { } known ? Figures.Number(known.Percent, 0)
        : lamp?.RelativeLight is null ? "-"
        : "unknown";
}
