using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The sentence of each kind of finding: the one place where findings are put into words.</summary>
internal static class FindingWords
{
    public static string Of(Finding finding) => finding.Kind switch
    {
        FindingKind.NoRuns => "No runs are listed: lamps are taken as connected directly across the battery, and voltage drop is not included.",
        FindingKind.PointsIgnored => "The points of lamps, switches and fuses are ignored without runs.",
        FindingKind.NoLitWhen => "No 'lit when' is listed: every lamp counts as on.",
        FindingKind.NoFuse => "No fuse is listed: whether one would suit is not judged.",
        FindingKind.NoChargingList => "No charging curve is listed: the charging balance is not included.",
        FindingKind.DriverDropsOut => $"Its driver drops out at {Text(finding.Value)}{In(finding)}: it cannot hold its power.",
        FindingKind.DriverMayDropOut => $"Its driver may drop out{In(finding)}: lit at {Text(finding.Value)}, but it can also stay dark, as when switched on at low voltage.",
        FindingKind.VoltageDropTooLarge => $"Drops {Text(finding.Value)} of the supply voltage{In(finding)} (limit {Text(finding.Limit)}).",
        FindingKind.LampOvervoltage => $"Runs at {Text(finding.Value)}, {Ratio(finding.Value, finding.Limit)} times its rated {Text(finding.Limit)}: it will burn out.",

        // Fuses and their wires.
        FindingKind.FuseContinuousLoadTooLarge => $"Overloaded: {Text(finding.Value)} continuous{In(finding)} (limit {Text(finding.Limit)}).",
        FindingKind.FusePeakTooLarge => $"Overloaded at the peak, momentary loads included: {Text(finding.Value)}{In(finding)} (rating {Text(finding.Limit)}); {finding.Detail}.",
        FindingKind.FusePeakAboveRating => $"The peak, momentary loads included, is {Text(finding.Value)}{In(finding)}, above the rating of {Text(finding.Limit)}; {finding.Detail}.",
        FindingKind.FuseInrushTooLarge => $"Inrush current may open it: {finding.Detail}.",
        FindingKind.WiresRatedBelowFuse => $"Too large for the wiring: it is rated {Text(finding.Limit)}, the smallest wire {Text(finding.Value)} ({finding.Detail}). Wires rated below it: {Names(finding)}.",
        FindingKind.WiresUnratedBehindFuse => $"Not shown to protect {Names(finding)}: {finding.Detail}.",
        FindingKind.CableKindNeeded => $"State the kind of cable ('cable' in runs.csv or bike.csv): as ordinary PVC cable these wires are rated below the {Text(finding.Limit)} fuse, the smallest {Text(finding.Value)}: {Names(finding)}.",
        FindingKind.BundledWiresBelowFuse => $"With every wire of the bundle loaded, these wires are rated below the {Text(finding.Limit)} fuse, the smallest {Text(finding.Value)}: {Names(finding)}.",
        FindingKind.FuseBypassed => $"Both sides are joined to the battery without a fuse{In(finding)}: a short draws its current past it.",
        FindingKind.ShortDoesNotClear => $"Does not clear a dead short at the end of {Names(finding)}: {finding.Detail}.",
        FindingKind.ShortNotShownToClear => $"Not shown to protect the wires in a dead short at the end of {Names(finding)}: {finding.Detail}.",
        _ => throw new UnreachableException($"No words for {finding.Kind}."),
    };

    /// <summary>The stable code of a kind, such as <c>voltage-drop-too-large</c>.</summary>
    public static string CodeOf(FindingKind kind) =>
        string.Concat(kind.ToString().Select((c, i) => char.IsUpper(c) ? $"{(i == 0 ? "" : "-")}{char.ToLowerInvariant(c)}" : c.ToString()));

    /// <summary>A quantity to what it is worth: volts and amps to two decimals, ohms to two figures, shares to one decimal, speeds whole.</summary>
    public static string Text(IQuantity? quantity) => quantity switch
    {
        ElectricPotential v => Invariant($"{v.Volts:0.00} V"),
        ElectricCurrent a => Invariant($"{a.Amperes:0.##} A"),
        ElectricResistance r => Invariant($"{TwoFigures(r.Ohms)} Ω"),
        Power p => Invariant($"{(double)p.Watts:0.#} W"),
        Ratio r => Invariant($"{r.Percent:0.#} %"),
        RotationalSpeed n => Invariant($"{n.RevolutionsPerMinute:0} rpm"),
        Duration t => Invariant($"{t.Minutes:0.#} min"),
        ElectricCharge q => Invariant($"{q.AmpereHours:0.##} Ah"),
        Area s => Invariant($"{s.SquareMillimeters:0.##} mm²"),
        _ => throw new UnreachableException($"No words for {quantity}."),
    };

    /// <summary>The setting of a finding, as the end of a clause; empty where it has none.</summary>
    private static string In(Finding finding) =>
        finding.Setting is not { } setting ? "" : $" in the setting '{setting}'{(finding.FurtherSettings > 0 ? $" and {finding.FurtherSettings} more" : "")}";

    private static string Names(Finding finding) => string.Join(", ", finding.Parts.Select(p => $"'{p}'"));

    private static string Ratio(IQuantity? value, IQuantity? limit) => Invariant($"{(double)value!.Value / (double)limit!.Value:0.00}");

    private static double TwoFigures(double value) => value == 0 ? 0 : double.Parse(value.ToString("G2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
