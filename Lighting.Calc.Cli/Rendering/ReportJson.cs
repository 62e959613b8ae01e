using System.Text.Json;
using Lighting.Calc.Charging;
using Lighting.Calc.Fuses;
using Lighting.Calc.Network;
using Lighting.Calc.Tolerances;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>check</c> and <c>load</c>.</summary>
internal static class ReportJson
{
    public static void Write(Utf8JsonWriter json, BikeReport report, ToleranceReport? tolerance = null)
    {
        json.WriteString("bike", report.Bike.Name);
        json.WriteNumber("supplyVoltageV", report.SupplyVoltage.Volts);
        json.WriteString("verdict", report.VerdictText);
        json.WriteStartArray("notJudged");
        foreach (string what in report.NotJudged)
            json.WriteStringValue(what);
        json.WriteEndArray();
        json.Array("settings", report.Settings, point => WriteSetting(json, report, point));
        WriteFuses(json, report.Fuses);
        WriteCharging(json, report.Charging);
        if (tolerance is not null)
            ToleranceJson.Write(json, tolerance);
        json.Findings(report.Findings);
    }

    public static void WriteFuses(Utf8JsonWriter json, IEnumerable<FuseSuitability> fuses) => json.Array("fuses", fuses, fuse =>
    {
        json.WriteString("fuse", fuse.Fuse.Name);
        json.WriteNumber("ratingA", fuse.Fuse.Rating.Amperes);
        json.WriteNumber("worstCurrentA", fuse.Steady.WorstCurrent.Amperes);
        json.Setting("worstSetting", fuse.Steady.WorstSetting);
        json.WriteNumber("usableA", fuse.Steady.UsableCurrent.Amperes);
        json.WriteString("verdict", fuse.VerdictText);
        json.Number("smallestRatingA", fuse.Advice.Smallest?.Amperes);
        json.Number("largestRatingA", fuse.Advice.Largest?.Amperes);
        json.WriteStartArray("reasons");
        foreach (string reason in fuse.Reasons)
            json.WriteStringValue(reason);
        json.WriteEndArray();
    });

    private static void WriteSetting(Utf8JsonWriter json, BikeReport report, OperatingPoint point)
    {
        json.Setting("setting", point.Setting);
        json.WriteNumber("totalCurrentA", point.TotalCurrent.Amperes);
        json.Array("points", point.Points, p =>
        {
            json.WriteString("point", p.Point);
            json.WriteNumber("voltageV", p.Voltage.Volts);
        });
        json.Array("circuits", CircuitLoad.Of(point), c =>
        {
            json.WriteString("circuit", c.Circuit);
            json.WriteNumber("currentA", c.Amperes);
            json.WriteNumber("powerW", c.Watts);
        });
        json.Array("lamps", point.Lamps, l =>
        {
            json.WriteString("lamp", l.Lamp.Lamp);
            json.WriteString("circuit", l.Lamp.Circuit);
            json.WriteNumber("quantity", l.Lamp.Quantity);
            json.WriteNumber("voltageV", l.Voltage.Volts);
            json.WriteNumber("currentA", l.Current.Amperes);
            json.WriteNumber("powerW", (double)l.Power.Watts);
            json.Number("relativeLight", l.RelativeLight?.DecimalFractions);
            json.Number("dropPercent", l.Drop?.Percent);
        });
        json.Array("runs", point.Runs, r =>
        {
            json.WriteString("run", r.Run.Name);
            json.WriteNumber("currentA", r.Current.Amperes);
            json.WriteNumber("dropV", (r.WireDrop + r.JointDrop).Volts);
            json.WriteNumber("resistanceOhm", r.Resistance.Ohms);
        });
        json.Array("fuses", point.Fuses, f =>
        {
            json.WriteString("fuse", f.Fuse.Name);
            json.WriteNumber("ratingA", f.Fuse.Rating.Amperes);
            json.WriteNumber("currentA", f.Current.Amperes);
            json.WriteNumber("headroomA", report.Fuses.First(s => s.Fuse.Name == f.Fuse.Name).Steady.UsableCurrent.Amperes - f.Current.Amperes);
        });
    }

    private static void WriteCharging(Utf8JsonWriter json, ChargingReport? charging)
    {
        if (charging is null)
            return;
        json.WriteStartObject("charging");
        json.Number("breakEvenRpm", charging.Worst?.BreakEven.Speed?.RevolutionsPerMinute);
        json.Number("netAmpereHours", charging.Ride?.NetCharge?.AmpereHours);
        json.WriteEndObject();
    }
}
