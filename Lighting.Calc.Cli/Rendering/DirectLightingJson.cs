using System.Text.Json;
using Lighting.Calc.Charging;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>charging</c> for a bike without a battery.</summary>
internal static class DirectLightingJson
{
    public static void Write(Utf8JsonWriter json, Bike bike, DirectLightingReport report)
    {
        json.WriteString("bike", bike.Name);
        json.Setting("setting", report.Setting);
        json.Array("points", report.Points, point =>
        {
            json.WriteNumber("rpm", point.Speed.RevolutionsPerMinute);
            json.WriteNumber("coilVoltageV", point.TerminalVoltage.Volts);
            json.WriteNumber("currentA", point.Current.Amperes);
            json.Array("lamps", point.Lamps, lamp =>
            {
                json.WriteString("lamp", lamp.Lamp.Lamp);
                json.WriteNumber("voltageV", lamp.Voltage.Volts);
                json.WriteNumber("currentA", lamp.Current.Amperes);
                json.Number("relativeLight", lamp.RelativeLight?.DecimalFractions);
            });
        });
        json.Array("losses", report.Losses, loss =>
        {
            json.WriteString("lamp", loss.Lamp.Lamp);
            json.WriteNumber("coilVoltageBeforeV", loss.Before.TerminalVoltage.Volts);
            json.WriteNumber("coilVoltageAfterV", loss.After.TerminalVoltage.Volts);
            json.Number("resistorOhm", loss.Mend?.Resistance.Ohms);
            json.Number("resistorPowerW", loss.Mend is { } mend ? (double)mend.Power.Watts : null);
        });
        json.Findings(report.Findings);
    }
}
