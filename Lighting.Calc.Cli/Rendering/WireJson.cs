using System.Text.Json;
using Lighting.Calc.Harness;
using Lighting.Calc.WireSizing;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>wire</c> for a bike.</summary>
internal static class WireJson
{
    public static void Write(Utf8JsonWriter json, Bike bike, WireSizingResult result)
    {
        json.WriteString("bike", bike.Name);
        json.WriteNumber("supplyVoltageV", result.Supply.Volts);
        json.WriteNumber("allowedDropPercent", result.AllowedDrop.Percent);
        json.WriteString("explanation", result.Explanation);
        json.WriteNumber("copperFittedM3", result.CopperFitted.CubicMeters);
        json.Number("copperChosenM3", result.CopperChosen?.CubicMeters);
        json.Array("runs", result.Runs, run =>
        {
            json.WriteString("run", run.Run.Name);
            json.WriteString("fitted", run.Run.Wire.Name);
            json.WriteString("wire", run.Chosen.Name);
            json.WriteString("limit", run.Limit.ToString().ToLowerInvariant());
            json.WriteString("explanation", run.Explanation);
            json.WriteNumber("worstCurrentA", run.WorstCurrent.Amperes);
            json.Number("ratingA", run.Rating.Current?.Amperes);
            json.WriteNumber("dropV", run.Drop.Volts);
        });
        json.Array("lamps", result.Lamps, lamp =>
        {
            json.WriteString("lamp", lamp.Lamp.Lamp);
            json.Number("dropFittedPercent", lamp.DropFitted?.Percent);
            json.Number("dropChosenPercent", lamp.DropChosen?.Percent);
        });
        json.Findings(result.Findings);
    }
}
