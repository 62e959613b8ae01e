using System.Text.Json;
using Lighting.Calc.FaultFinding;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>readings</c>.</summary>
internal static class ReadingsJson
{
    public static void Write(Utf8JsonWriter json, ExpectedReadings expected)
    {
        json.WriteString("bike", expected.Bike.Name);
        json.Number("engineRpm", expected.EngineSpeed?.RevolutionsPerMinute);
        json.Array("settings", expected.Settings, setting =>
        {
            json.Setting("setting", setting.Setting);
            json.Array("points", setting.Points, p =>
            {
                json.WriteString("point", p.Point);
                json.WriteNumber("voltageV", p.Voltage.Volts);
                json.WriteNumber("lowestV", p.Lowest.Volts);
                json.WriteNumber("highestV", p.Highest.Volts);
                json.WriteString("testLamp", LookWord(p.TestLamp));
                json.WriteNumber("fromFrameV", p.FromFrame.Volts);
            });
            json.Array("fuses", setting.Fuses, f =>
            {
                json.WriteString("fuse", f.Fuse);
                json.WriteNumber("currentA", f.Current.Amperes);
                json.WriteNumber("lowestA", f.Lowest.Amperes);
                json.WriteNumber("highestA", f.Highest.Amperes);
            });
            json.Array("lamps", setting.Lamps, l =>
            {
                json.WriteString("lamp", l.Lamp);
                json.WriteString("seen", LookWord(l.Seen));
                json.WriteNumber("voltageV", l.Voltage.Volts);
            });
        });
        json.Array("ohms", expected.Ohms, o =>
        {
            json.WriteString("part", o.Part);
            json.WriteBoolean("isKnown", o.IsKnown);
            json.Number("inPlaceOhm", o.InCircuit?.Ohms);
            json.Number("aloneOhm", o.Isolated?.Ohms);
        });
        json.Findings(expected.Notes);
    }

    private static string LookWord(Brightness look) => look == Brightness.Normal ? "good" : look.ToString().ToLowerInvariant();
}
