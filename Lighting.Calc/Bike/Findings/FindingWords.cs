using System.Diagnostics;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The sentence of each kind of finding: the one place where findings are put into words.</summary>
internal static partial class FindingWords
{
    public static string Of(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.NoRuns =>
                "No runs are listed: lamps are taken as connected directly across the battery, and voltage drop is not "
                    + "included.",
            FindingKind.PointsIgnored => "The points of lamps, switches and fuses are ignored without runs.",
            FindingKind.JointsAssumed => string.Create(
                CultureInfo.InvariantCulture,
                $"Joints without a listed resistance: {Figure(finding, 0)}, taken as "
                    + $"{((ElectricResistance)finding.Value!).Milliohms:0.#} mΩ each, a typical value."
            ),
            FindingKind.NoLitWhen => "No 'lit when' is listed: every lamp counts as on.",
            FindingKind.OnlySomeSettings =>
                "Only the settings in which this holds are judged: what suits them need not suit the others.",
            FindingKind.NoFuse => "No fuse is listed: whether one would suit is not judged.",
            FindingKind.NoChargingList => "No charging curve is listed: the charging balance is not included.",
            FindingKind.DriverDropsOut =>
                $"Its driver drops out at {Text(finding.Value)}{In(finding)}: it cannot hold its power.{Also(finding)}",
            FindingKind.DriverMayDropOut =>
                $"Its driver may drop out{In(finding)}: lit at {Text(finding.Value)}, but it can also stay dark, as "
                    + $"when switched on at low voltage.{Also(finding)}",
            FindingKind.VoltageDropTooLarge => $"Drops {Text(finding.Value)} of the supply voltage{In(finding)} (limit "
                + $"{Text(finding.Limit)}).{Also(finding)}",
            FindingKind.ContactsWithoutResistance =>
                $"No resistance is listed for the contacts of {Listed(finding)}: they are taken as 0 Ω, and real ones "
                    + "cost voltage. Measure the drop over each and list it.",
            FindingKind.NoSwitchList =>
                $"No switches are listed, though 'lit when' names {Listed(finding)}: list their "
                    + "contacts. Until then no lamp is held to its 'lit when'.",
            FindingKind.MomentaryVoltageDrop =>
                $"Momentary{In(finding)}: drops {Text(finding.Value)} of the supply voltage (limit "
                    + $"{Text(finding.Limit)}).{Also(finding)}",
            FindingKind.LampOvervoltage =>
                $"Runs at {Text(finding.Value)}, above {Text(finding.Limit)}, {finding.Detail}: it will burn "
                    + $"out.{Also(finding)}",
            _ => OfWiring(finding)
                ?? OfCharging(finding)
                ?? OfSwap(finding)
                ?? OfFaultFinding(finding)
                ?? OfFuses(finding)
                ?? throw new UnreachableException($"No words for {finding.Kind}."),
        };

    /// <summary>The stable code of a kind, such as <c>voltage-drop-too-large</c>.</summary>
    public static string CodeOf(FindingKind kind) =>
        string.Concat(
            kind.ToString()
                .Select((c, i) => char.IsUpper(c) ? $"{(i == 0 ? "" : "-")}{char.ToLowerInvariant(c)}" : c.ToString())
        );

    /// <summary>A quantity to what it is worth: volts and amps to two decimals, ohms to two figures, shares to one
    /// decimal, speeds whole.</summary>
    public static string Text(IQuantity? quantity) =>
        quantity switch
        {
            ElectricPotential v => Invariant($"{v.Volts:0.00} V"),
            ElectricCurrent a => Invariant($"{a.Amperes:0.##} A"),
            ElectricResistance r => Invariant($"{TwoFigures(r.Ohms)} Ω"),
            Power p => Invariant($"{(double)p.Watts:0.#} W"),
            Ratio r => Invariant($"{r.Percent:0.#} %"),
            RotationalSpeed n => Invariant($"{n.RevolutionsPerMinute:0} rpm"),
            Duration t => t.Hours < 2 ? Invariant($"{t.Minutes:0} min") : Invariant($"{t.Hours:0.0} h"),
            ElectricCharge q => Invariant($"{q.AmpereHours:0.##} Ah"),
            LuminousFlux f => Invariant($"{f.Lumens:0} lm"),
            Scalar n => Invariant($"{n.Amount:0}"),
            Frequency f => Invariant($"{f.CyclesPerMinute:0}"),
            Area s => Invariant($"{s.SquareMillimeters:0.##} mm²"),
            _ => throw new UnreachableException($"No words for {quantity}."),
        };

    /// <summary>The setting of a finding, as the end of a clause; empty where it has none.</summary>
    private static string In(Finding finding) =>
        finding.Setting is not { } setting
            ? ""
            : $" in the setting '{setting}'"
                + $"{(finding.FurtherSettings > 0 ? $" and {finding.FurtherSettings} more" : "")}";

    /// <summary>The further parts that share the cause, each with its figure where it has one, as a sentence of its
    /// own.</summary>
    private static string Also(Finding finding) =>
        finding.Parts.IsEmpty
            ? ""
            : $" Also: {string.Join(", ", finding.Parts.Select((part, i) => part + FigureOf(finding, i)))}.";

    private static string FigureOf(Finding finding, int part) =>
        finding.Figures.Length == finding.Parts.Length ? $" {Text(finding.Figures[part])}" : "";

    private static string Figure(Finding finding, int index) => Text(finding.Figures[index]);

    private static string Ratio(IQuantity? value, IQuantity? limit) =>
        Invariant($"{(double)value!.Value / (double)limit!.Value:0.00}");

    private static double TwoFigures(double value) =>
        value == 0 ? 0 : double.Parse(value.ToString("G2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
