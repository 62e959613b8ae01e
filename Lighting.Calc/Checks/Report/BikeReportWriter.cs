using System.Collections.Immutable;
using System.Text.Json;

namespace Lighting.Calc;

/// <summary>Writes a report as the JSON of the command's <c>check</c>: a few kilobytes, verdict first.</summary>
/// <remarks>
/// Camel case; SI numbers of 12 significant digits with the unit at the end of the key; null where a value is unknown.
/// Its schema is <c>schemas/check.json</c> in the package.
/// </remarks>
public static class BikeReportWriter
{
    /// <summary>Number of the form of all JSON, its member <c>schema</c>: it changes when a key is renamed or
    /// removed.</summary>
    public const int Schema = 1;

    /// <summary>The report as indented JSON.</summary>
    /// <param name="report">The report.</param>
    /// <exception cref="ArgumentNullException">The report is null.</exception>
    public static string ToJson(BikeReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return JsonText.Of(json => Write(report, json));
    }

    /// <summary>The same object to a writer of your own.</summary>
    /// <param name="report">The report.</param>
    /// <param name="writer">Receives one object.</param>
    /// <exception cref="ArgumentNullException">The report or the writer is null.</exception>
    public static void Write(BikeReport report, Utf8JsonWriter writer)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        writer.WriteNumber("schema", Schema);
        writer.WriteString("result", "check");
        Texts(writer, "cautions", CautionTexts.OfWork(report.Bike));
        WriteMembers(report, writer);
        writer.WriteEndObject();
    }

    /// <summary>The members that follow the cautions.</summary>
    internal static void WriteMembers(BikeReport report, Utf8JsonWriter json)
    {
        json.WriteString("bike", report.Bike.Name);
        Number(json, "supplyVoltageV", report.SupplyVoltage.Volts);
        json.WriteString("verdict", report.VerdictText);
        json.WriteString("headline", report.Headline);
        Texts(json, "notJudged", report.NotJudged);
        Objects(json, "causes", report.Causes, Cause);
        Objects(json, "fuses", report.Fuses, Fuse);
        Objects(json, "lamps", report.WorstDrops, Lamp);
        json.WriteStartObject("load");
        Position(json, "setting", report.Heaviest.Setting);
        Number(json, "totalCurrentA", report.Heaviest.TotalCurrent.Amperes);
        json.WriteEndObject();
        Charging(json, report.Charging);
        DirectLighting(json, report.DirectLighting);
        Objects(json, "findings", report.Findings, Finding);
    }

    private static void Cause(Utf8JsonWriter json, VerdictCause cause)
    {
        json.WriteString("cause", cause.Text);
        json.WriteString("remedy", cause.Remedy);
    }

    private static void Fuse(Utf8JsonWriter json, FuseSuitability fuse)
    {
        ContinuousLoad load = fuse.Steady;
        json.WriteString("fuse", fuse.Fuse.Name);
        Number(json, "ratingA", fuse.Fuse.Rating.Amperes);
        Number(json, "continuousCurrentA", load.ContinuousCurrent.Amperes);
        Number(json, "usableA", load.UsableCurrent.Amperes);
        Position(json, "continuousSetting", load.ContinuousSetting);
        Number(json, "worstCurrentA", load.WorstCurrent.Amperes);
        Number(json, "peakLimitA", load.PeakLimit.Amperes);
        Position(json, "worstSetting", load.WorstSetting);
        Number(json, "worstRpm", load.WorstSpeed?.RevolutionsPerMinute);
        json.WriteString("verdict", fuse.VerdictText);
        Number(json, "smallestRatingA", fuse.Advice.Smallest?.Amperes);
        Number(json, "largestRatingA", fuse.Advice.Largest?.Amperes);
        Texts(json, "momentaryLoads", load.MomentaryLoads);
        Texts(json, "reasons", fuse.Reasons);
    }

    // Each lamp in the setting in which it loses most.
    private static void Lamp(Utf8JsonWriter json, VoltageDropBreakdown drop)
    {
        LampState lamp = drop.Lamp;
        json.WriteString("lamp", lamp.Lamp.Lamp);
        json.WriteString("circuit", lamp.Lamp.Circuit);
        Position(json, "setting", drop.Setting);
        Number(json, "voltageV", lamp.Voltage.Volts);
        Number(json, "currentA", lamp.Current.Amperes);
        Number(json, "powerW", (double)lamp.Power.Watts);
        Number(json, "relativeLight", lamp.PublishedLight?.DecimalFractions);
        Number(json, "dropPercent", lamp.Drop?.Percent);
    }

    private static void Charging(Utf8JsonWriter json, ChargingReport? charging)
    {
        if (charging is null)
        {
            json.WriteNull("charging");
            return;
        }

        json.WriteStartObject("charging");
        Number(json, "demandA", charging.Worst?.Demand.Amperes);
        Position(json, "setting", charging.Worst?.Setting);
        Number(json, "breakEvenRpm", charging.Worst?.BreakEven.Speed?.RevolutionsPerMinute);
        json.WriteString("breakEven", charging.Worst is { } worst ? BreakEvenWords.Of(worst.BreakEven) : null);
        Number(json, "netAmpereHours", charging.Ride?.NetCharge?.AmpereHours);
        json.WriteEndObject();
    }

    private static void DirectLighting(Utf8JsonWriter json, DirectLightingReport? direct)
    {
        if (direct is null)
        {
            json.WriteNull("directLighting");
            return;
        }

        json.WriteStartObject("directLighting");
        Position(json, "setting", direct.Setting);
        Objects(
            json,
            "points",
            direct.Points,
            static (json, point) =>
            {
                Number(json, "rpm", point.Speed.RevolutionsPerMinute);
                Number(json, "coilVoltageV", point.TerminalVoltage.Volts);
            }
        );
        json.WriteEndObject();
    }

    private static void Finding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
        json.WriteString("kind", finding.Code);
        json.WriteString("subject", finding.Subject);
        json.WriteString("message", finding.Message);
    }

    private static void Number(Utf8JsonWriter json, string key, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(key, PlainFigures.Exact(number));
        else
            json.WriteNull(key);
    }

    private static void Position(Utf8JsonWriter json, string key, Setting? setting)
    {
        if (setting is null)
        {
            json.WriteNull(key);
            return;
        }

        json.WriteStartObject(key);
        foreach (SwitchPosition position in setting.Positions)
            json.WriteString(position.Switch, position.Position);
        json.WriteEndObject();
    }

    private static void Texts(Utf8JsonWriter json, string key, ImmutableArray<string> texts)
    {
        json.WriteStartArray(key);
        foreach (string text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static void Objects<T>(
        Utf8JsonWriter json,
        string key,
        ImmutableArray<T> items,
        Action<Utf8JsonWriter, T> write
    )
    {
        json.WriteStartArray(key);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
