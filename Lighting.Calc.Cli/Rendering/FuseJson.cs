using System.Text.Json;
using Lighting.Calc.Harness;
using Lighting.Calc.Verdicts;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>fuse</c>.</summary>
internal static class FuseJson
{
    public static void Write(Utf8JsonWriter json, BikeReport report, IEnumerable<Finding> findings)
    {
        json.WriteString("bike", report.Bike.Name);
        json.WriteNumber("supplyVoltageV", report.SupplyVoltage.Volts);
        ReportJson.WriteFuses(json, report.Fuses);
        json.Findings(findings);
    }
}
