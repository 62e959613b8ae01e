using System.Text.Json;
using Lighting.Calc.Tolerances;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The object <c>tolerance</c> of <c>check</c>.</summary>
internal static class ToleranceJson
{
    public static void Write(Utf8JsonWriter json, ToleranceReport report)
    {
        json.WriteStartObject("tolerance");
        json.WriteNumber("samples", report.Samples);
        json.WriteNumber("seed", report.Seed);
        json.WriteNumber("states", report.States);
        json.Array("lamps", report.Lamps, lamp =>
        {
            json.WriteString("lamp", lamp.Lamp.Lamp);
            Spread(json, "voltageV", lamp.Voltage, v => v.Volts);
            Spread(json, "dropPercent", lamp.Drop, v => v.Percent);
            Spread(json, "relativeLight", lamp.RelativeLight, v => v.DecimalFractions);
        });
        json.Array("fuses", report.Fuses, fuse =>
        {
            json.WriteString("fuse", fuse.Fuse.Name);
            json.WriteNumber("usableA", fuse.UsableCurrent.Amperes);
            json.WriteString("verdict", fuse.VerdictText);
            Spread(json, "currentA", fuse.Current, v => v.Amperes);
        });
        Spread(json, "breakEvenRpm", report.BreakEven, v => v.RevolutionsPerMinute);
        Spread(json, "netAmpereHours", report.RideBalance, v => v.AmpereHours);
        json.Array("verdicts", report.Verdicts, verdict =>
        {
            json.WriteString("subject", verdict.Subject);
            json.WriteString("verdict", verdict.Verdict);
            json.WriteNumber("probability", verdict.Probability.DecimalFractions);
        });
        json.Array("parts", report.Parts, part =>
        {
            json.WriteString("part", part.Name);
            json.WriteString("shape", part.Spread.Shape.ToString().ToLowerInvariant());
            json.WriteString("limits", part.Spread.Limits);
            json.WriteString("source", part.Spread.Source);
        });
        json.WriteEndObject();
    }

    private static void Spread<T>(Utf8JsonWriter json, string name, ResultSpread<T>? spread, Func<T, double> number)
        where T : struct, IQuantity
    {
        if (spread is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        Write("listed", spread.Listed);
        Write("p5", spread.Percentile5);
        Write("p50", spread.Median);
        Write("p95", spread.Percentile95);
        Write("mean", spread.Mean);
        Write("standardDeviation", spread.StandardDeviation);
        json.WriteString("mattersMost", spread.MattersMost?.Part.Name);
        json.Array("shares", spread.Shares, share =>
        {
            json.WriteString("part", share.Part.Name);
            json.WriteNumber("share", share.Share.DecimalFractions);
        });
        json.WriteEndObject();

        void Write(string key, T? value) => json.Number(key, value is { } known ? number(known) : null);
    }
}
