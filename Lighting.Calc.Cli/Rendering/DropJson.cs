using System.Text.Json;
using Lighting.Calc.Network;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>drop</c>.</summary>
internal static class DropJson
{
    public static void Write(Utf8JsonWriter json, BikeReport report)
    {
        json.WriteString("bike", report.Bike.Name);
        json.WriteNumber("supplyVoltageV", report.SupplyVoltage.Volts);
        json.WriteBoolean("dropsIncluded", report.Bike.HasNetwork);
        json.WriteNumber("allowedDropPercent", report.Bike.AllowedDrop.Percent);
        json.Array("lamps", report.WorstDrops, ledger =>
        {
            json.WriteString("lamp", ledger.Lamp.Lamp.Lamp);
            json.Setting("setting", ledger.Setting);
            json.WriteNumber("voltageV", ledger.Lamp.Voltage.Volts);
            json.WriteNumber("currentA", ledger.Lamp.Current.Amperes);
            json.Number("dropPercent", ledger.Lamp.Drop?.Percent);
            json.Number("relativeLight", ledger.Lamp.RelativeLight?.DecimalFractions);
            json.Number("lightLost", ledger.LightLost?.DecimalFractions);
            json.Array("ledger", ledger.Entries, entry =>
            {
                json.WriteString("kind", DropWords.Of(entry.Kind));
                json.WriteString("part", entry.Part);
                json.WriteNumber("dropV", entry.Voltage.Volts);
                json.WriteNumber("sharePercent", entry.Share.Percent);
                json.WriteNumber("currentA", entry.Current.Amperes);
            });
            json.Array("mending", DropAnalysis.CostliestOf(report.Network, ledger), gain =>
            {
                json.WriteString("kind", DropWords.Of(gain.Entry.Kind));
                json.WriteString("part", gain.Entry.Part);
                json.WriteNumber("gainV", gain.Voltage.Volts);
                json.Number("gainLight", gain.Light?.DecimalFractions);
            });
        });
    }
}
