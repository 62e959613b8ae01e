using System.Text.Json;
using Lighting.Calc.Harness;
using Lighting.Calc.Network;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>A circuit in one setting as JSON: what its drawing shows.</summary>
internal static class DiagramJson
{
    public static void Write(Utf8JsonWriter json, Bike bike, OperatingPoint point)
    {
        json.WriteString("bike", bike.Name);
        json.WriteNumber("supplyVoltageV", point.SupplyVoltage.Volts);
        json.Setting("setting", point.Setting);
        json.WriteNumber("totalCurrentA", point.TotalCurrent.Amperes);
        json.Array("points", point.Points, p =>
        {
            json.WriteString("point", p.Point);
            json.WriteNumber("voltageV", p.Voltage.Volts);
        });
        json.Array("parts", DiagramDocument.PartsOf(bike, point), p =>
        {
            json.WriteString("part", p.Name);
            json.WriteString("kind", p.Kind);
            json.WriteString("from", p.From);
            json.WriteString("to", p.To);
            if (p.Colour is not null)
                json.WriteString("colour", p.Colour);
            json.WriteNumber("currentA", p.Amperes);
        });
    }
}
