namespace Lighting.Calc;

internal static partial class FindingWords
{
    private static string? OfSwap(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.ElectronicFlasherLoad =>
                $"{FlasherLoad(finding)}. An electronic flasher keeps its rate if its minimum load is not above that.",
            FindingKind.FlasherStops => ThermalFlasher(finding, "stops, or lights without flashing,"),
            FindingKind.FlasherRateChanges => ThermalFlasher(finding, "may change its rate"),
            FindingKind.UnstatedFlasherStops =>
                $"{ThermalFlasher(finding, "stops, or lights without flashing,")} {KindNotStated}",
            FindingKind.UnstatedFlasherRateChanges =>
                $"{ThermalFlasher(finding, "may change its rate")} {KindNotStated}",
            FindingKind.LoadResistors => LoadResistors(finding),
            FindingKind.RegulatorHeatAfterSwap =>
                $"With the lights on the regulator makes {Text(finding.Value)} of heat{Speed(finding)}, "
                    + $"before the swap {Text(finding.Limit)}: it takes what the lamps no longer take. "
                    + (
                        finding.Figures.Length > 1
                            ? $"It is rated for {Figure(finding, 1)}."
                            : "Its rating is not listed."
                    ),
            FindingKind.SneakFeed => $"{Glows(finding)}. It gives {Figure(finding, 1)} of its light.",
            FindingKind.SneakFeedThroughLamp =>
                $"{GlowsThrough(finding)} Remedy: two diodes, one from each of those points to '{finding.Parts[0]}', "
                    + $"and its return on the frame (solved: the lamp then stays dark).",
            FindingKind.SneakFeedThroughMore =>
                $"{GlowsThrough(finding)} Two diodes at '{finding.Parts[0]}' would not remedy it: check what else "
                    + $"feeds it.",
            FindingKind.DarkAfterSwap when Negative(finding) =>
                $"Dark after the swap{In(finding)}: the voltage across it is the wrong way round "
                    + $"({Text(finding.Value)}), which does not matter to a filament but does to an LED. Fit two "
                    + $"diodes to "
                    + $"its feed and connect its return to the frame.",
            FindingKind.DarkAfterSwap => $"Dark after the swap{In(finding)}, at {Text(finding.Value)}.",
            FindingKind.SurplusAfterSwap =>
                $"{Surplus(finding)} A regulator must keep this out of a full battery: state 'regulator' in bike.csv.",
            FindingKind.OverchargeAfterSwap =>
                $"Overcharge: {Surplus(finding)} It flows into a full battery because there is no regulator. Fit a "
                    + $"regulator, or leave a load.",
            FindingKind.ShuntLimitExceededAfterSwap => $"Beyond the shunt regulator's limit: {Surplus(finding)}",
            FindingKind.CoilVoltageAfterSwap =>
                $"{Text(finding.Value)}{Speed(finding)} with its heaviest load, {Text(finding.Limit)} before the swap: "
                    + $"every lamp that stays receives that voltage.",
            FindingKind.CoilOvervoltageRemedy =>
                $"{CoilRegulator(finding)} Or a {Figure(finding, 2)} resistor across it, "
                    + (
                        finding.Figures.Length > 8
                            ? $"a {Figure(finding, 8)} one on metal"
                            : "for which no usual resistor is rated"
                    )
                    + $": {Figure(finding, 3)} at most and {Figure(finding, 4)} up to {Figure(finding, 0)} (solved), "
                    + $"but {Figure(finding, 5)} instead of {Figure(finding, 6)} at {Figure(finding, 7)}. "
                    + FirstEstimate,
            FindingKind.CoilNeedsRegulator =>
                $"{CoilRegulator(finding)} No resistor across it does the same: {Figure(finding, 2)} or less takes the "
                    + $"lamps' voltage ({Figure(finding, 3)}), more leaves over {Figure(finding, 4)}. {FirstEstimate}",
            FindingKind.LedPolarity =>
                $"The bike has positive earth: {Listed(finding)} must suit it, or either polarity. The usual LED, "
                    + $"shell negative, stays dark. All are taken as fitted the right way round.",
            FindingKind.LessLight =>
                $"{Text(finding.Value)} instead of {Text(finding.Limit)}, {Figure(finding, 0)} of the "
                    + $"light{In(finding)}.",
            FindingKind.LightUnknown => $"Change in light output unknown for {Listed(finding)}: no published lumens.",
            FindingKind.RoadApproval =>
                $"{Listed(finding)}: such lamps are approved together with their light source, and an LED in their "
                    + $"place may end the approval. Local law decides.",
            FindingKind.SmallerFuse =>
                $"Carries {Text(finding.Value)} at most, {Text(finding.Limit)} before the swap: a {Figure(finding, 0)} "
                    + $"fuse suffices and protects the wires better.",
            FindingKind.LedOvervoltage =>
                $"May receive {Text(finding.Value)} from {finding.Detail}, more than its {Text(finding.Limit)} "
                    + $"maximum.{Also(finding)}",
            FindingKind.LedCurrentHigh =>
                $"At {Text(finding.Value)}, the highest of {finding.Detail}, LED resistors pass more than their rated "
                    + $"current: {string.Join(", ", finding.Parts.Select((p, i) => $"{p} {Figure(finding, i)}"))}.",
            FindingKind.LedMaximumUnknown =>
                $"Maximum voltage not listed for {Listed(finding)}: check that they tolerate {Text(finding.Value)}, "
                    + $"the highest of {finding.Detail}.",
            FindingKind.StopFunctionInTail =>
                $"'{finding.Detail}' is the brighter of the two functions; the one in place of this filament is "
                    + $"'{finding.Detail} minor'.",
            FindingKind.OneFilamentOfTwo =>
                $"This lamp and '{finding.Parts[0]}' are the two filaments of one {finding.Detail}, and the swap "
                    + $"replaces one only: its replacement must have both functions.",
            _ => null,
        };

    private const string KindNotStated = "Its kind is not stated: state 'flasher' in bike.csv.";
    private const string FirstEstimate = "A first estimate: LEDs draw alternating current in pulses.";

    private static string Listed(Finding finding) => string.Join(", ", finding.Parts);

    private static string FlasherLoad(Finding finding) =>
        $"{Text(finding.Value)} on the flasher ({Listed(finding)}) instead of {Text(finding.Limit)}, "
        + $"{100 * (double)finding.Value!.Value / (double)finding.Limit!.Value:0} % of its load";

    private static string ThermalFlasher(Finding finding, string does) =>
        $"{FlasherLoad(finding)}. A thermal flasher {does} below {Figure(finding, 0)} (common practice); its strip "
        + $"gets {Figure(finding, 1)} of the heat. {Figure(finding, 2)} to {Figure(finding, 4)} flashes a minute are "
        + $"required, {Figure(finding, 3)} to {Figure(finding, 4)} of a flasher for a fixed load (SAE J945 in FMVSS "
        + $"108). Remedy: an electronic flasher, or a load resistor beside each lamp.";

    private static string LoadResistors(Finding finding) =>
        $"Beside each of {Listed(finding)}: {Text(finding.Value)} makes up for {Figure(finding, 1)} at "
        + $"{Figure(finding, 2)} (next standard value {Figure(finding, 0)}). It dissipates {Figure(finding, 3)} lit at "
        + $"{Figure(finding, 4)}, {Figure(finding, 5)} flashing at most: "
        + (
            finding.Figures.Length > 6
                ? $"fit a {Figure(finding, 6)} one on metal, away from plastic"
                : "no usual resistor is rated for that"
        )
        + ". It draws the current that the LED saves.";

    private static string Glows(Finding finding) =>
        $"Glows where it should be dark{In(finding)}: {Text(finding.Value)} and "
        + $"{1000 * (double)finding.Figures[0].Value:0} mA";

    private static string GlowsThrough(Finding finding) =>
        $"{Glows(finding)} through '{finding.Parts[0]}', which is connected between '{finding.Parts[1]}' and "
        + $"'{finding.Parts[2]}'. It gives {Figure(finding, 1)} of its light.";

    private static string Surplus(Finding finding) =>
        $"{Text(finding.Value)} surplus output{Speed(finding)}, {Text(finding.Limit)} before the swap"
        + (finding.Figures.Length > 1 ? $" (a full battery takes about {Figure(finding, 1)} without gassing)." : ".");

    private static string CoilRegulator(Finding finding) =>
        $"Remedy: a regulator for alternating current across the coil that holds {Text(finding.Limit)}. It takes "
        + $"{Text(finding.Value)}{Speed(finding)}, {Figure(finding, 1)} if it dissipates them.";
}
