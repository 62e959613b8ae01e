using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>By what a fuse is judged.</summary>
public sealed record FuseOptions
{
    internal const double QuickShortSeconds = 5;

    /// <summary>Steady current as a share of the rating at 25 °C, above 0 to 100 %. Default 75 % (UL 248-14 practice; from memory).</summary>
    public Ratio ContinuousLoadFactor { get; init; } = Ratio.FromPercent(75);

    /// <summary>Temperature of the air round the fuse, −40 °C to 125 °C. Default 25 °C.</summary>
    public Temperature Ambient { get; init; } = Temperature.FromDegreesCelsius(25);

    /// <summary>Temperature of the air round the wires, −40 °C and above. Default 30 °C, that of the published ratings.</summary>
    public Temperature WireAmbient { get; init; } = Temperature.FromDegreesCelsius(30);

    /// <summary>
    /// The longest a dead short may last, above zero; null takes the style's published time at 200 % of the rating:
    /// 5 s for a blade (also the span for which IEC 60364-4-43 reckons a shorted wire's heat; from memory), 120 s for glass (UL 248-14).
    /// </summary>
    public Duration? LongestShort { get; init; }

    /// <summary>
    /// Whether glass fuses are marked with the current at which they blow, as some older ones are: they carry half of it without end
    /// (from memory: 35 A blow is 17 A continuous). Half the marked figure is then judged as the rating; blades are not touched.
    /// </summary>
    public bool GlassMarkedWithBlowingCurrent { get; init; }

    /// <summary>Switches that are held only for moments; the share of the worst current that is due to them is told apart. Names compare without case.</summary>
    public ImmutableArray<string> MomentarySwitches { get; init; } = ["brake", "stop", "horn", "indicators", "indicator", "turn", "turn signals", "flasher", "flash", "pass"];
}
