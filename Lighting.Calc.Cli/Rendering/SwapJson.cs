using System.Text.Json;
using Lighting.Calc.Charging;
using Lighting.Calc.Fuses;
using Lighting.Calc.Swaps;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>swap</c>: each part has a <c>before</c> and an <c>after</c> of the same keys.</summary>
internal static class SwapJson
{
    public static void Write(Utf8JsonWriter json, SwapReport report, IEnumerable<UnclassedLamp> unclassed)
    {
        json.WriteString("bike", report.Before.Bike.Name);
        json.WriteNumber("supplyVoltageV", report.After.SupplyVoltage.Volts);
        json.WriteString("verdict", report.VerdictText);
        Pair(json, "totalCurrentA", report.Before.Heaviest.TotalCurrent.Amperes, report.After.Heaviest.TotalCurrent.Amperes);
        json.Array("lamps", report.Lamps, lamp => WriteLamp(json, lamp));
        json.Array("unchanged", unclassed, stays =>
        {
            json.WriteString("lamp", stays.Lamp.Lamp);
            json.WriteString("reason", stays.Reason);
        });
        json.Array("circuits", report.Circuits, circuit =>
        {
            json.WriteString("circuit", circuit.Circuit);
            Pair(json, "currentA", circuit.CurrentBefore.Amperes, circuit.CurrentAfter.Amperes);
            Pair(json, "powerW", (double)circuit.PowerBefore.Watts, (double)circuit.PowerAfter.Watts);
        });
        json.Array("fuses", report.Fuses, fuse =>
        {
            json.WriteString("fuse", fuse.After.Fuse.Name);
            json.WriteNumber("ratingA", fuse.After.Fuse.Rating.Amperes);
            WriteFuse(json, "before", fuse.Before);
            WriteFuse(json, "after", fuse.After);
        });
        Pair(json, "worstDropPercent", report.WorstDropBefore?.Lamp.Drop?.Percent, report.WorstDropAfter?.Lamp.Drop?.Percent);
        WriteCharging(json, report);
        json.Array("standing", report.Standing, standing =>
        {
            json.Setting("setting", standing.Setting);
            json.WriteNumber("toPercent", standing.After.To.Percent);
            Pair(json, "loadA", standing.Before.Load.Amperes, standing.After.Load.Amperes);
            Pair(json, "timeS", standing.Before.Time?.Seconds, standing.After.Time?.Seconds);
        });
        json.Array("flasher", report.Flashers, flasher =>
        {
            json.Setting("setting", flasher.Setting);
            Pair(json, "nominalPowerW", (double)flasher.NominalBefore.Watts, (double)flasher.NominalAfter.Watts);
            json.WriteNumber("flasherLoadW", (double)flasher.FlasherLoad.Watts);
            json.WriteNumber("loadSharePercent", flasher.Share.Percent);
        });
        json.Array("loadResistors", report.Resistors, resistor =>
        {
            json.WriteString("lamp", resistor.Lamp.Lamp);
            json.WriteNumber("quantity", resistor.Lamp.Quantity);
            json.WriteNumber("resistanceOhm", resistor.Resistor.Resistance.Ohms);
            json.WriteNumber("preferredResistanceOhm", resistor.Resistor.PreferredResistance.Ohms);
            json.WriteNumber("heatW", (double)resistor.HighestHeat.Watts);
            json.Number("ratingW", (double?)resistor.Rating?.Watts);
        });
        json.Array("sneakFeeds", report.SneakFeeds, sneak =>
        {
            json.WriteString("lamp", sneak.Glowing.Lamp.Lamp);
            json.Setting("setting", sneak.Setting);
            json.WriteNumber("voltageV", sneak.Glowing.Voltage.Volts);
            json.WriteNumber("currentA", sneak.Glowing.Current.Amperes);
            json.WriteString("through", sneak.Through?.Lamp.Lamp);
        });
        json.Findings(report.Findings);
    }

    private static void WriteLamp(Utf8JsonWriter json, LampChange lamp)
    {
        json.WriteString("lamp", lamp.Lamp.Lamp);
        json.WriteString("circuit", lamp.Lamp.Circuit);
        json.WriteNumber("quantity", lamp.Lamp.Quantity);
        json.WriteBoolean("replaced", lamp.IsReplaced);
        if (lamp.Setting is { } setting)
            json.Setting("setting", setting);
        else
            json.WriteNull("setting");
        Pair(json, "voltageV", lamp.Before?.Voltage.Volts, lamp.After?.Voltage.Volts);
        Pair(json, "currentA", lamp.Before?.Current.Amperes, lamp.After?.Current.Amperes);
        Pair(json, "powerW", (double?)lamp.Before?.Power.Watts, (double?)lamp.After?.Power.Watts);
        Pair(json, "relativeLight", lamp.Before?.RelativeLight?.DecimalFractions, lamp.After?.RelativeLight?.DecimalFractions);
        Pair(json, "lightLm", lamp.LightBefore?.Lumens, lamp.LightAfter?.Lumens);
        Pair(json, "dropPercent", lamp.Before?.Drop?.Percent, lamp.After?.Drop?.Percent);
    }

    private static void WriteFuse(Utf8JsonWriter json, string name, FuseSuitability fuse)
    {
        json.WriteStartObject(name);
        json.WriteNumber("worstCurrentA", fuse.Steady.WorstCurrent.Amperes);
        json.Setting("worstSetting", fuse.Steady.WorstSetting);
        json.WriteString("verdict", fuse.VerdictText);
        json.Number("smallestRatingA", fuse.Advice.Smallest?.Amperes);
        json.Number("largestRatingA", fuse.Advice.Largest?.Amperes);
        json.WriteEndObject();
    }

    private static void WriteCharging(Utf8JsonWriter json, SwapReport report)
    {
        json.WriteStartObject("charging");
        json.Array("balances", report.Charging, change =>
        {
            json.Setting("setting", change.Setting);
            Pair(json, "demandA", change.Before.Demand.Amperes, change.After.Demand.Amperes);
            Pair(json, "breakEvenRpm", Rpm(change.Before.BreakEven), Rpm(change.After.BreakEven));
        });
        Pair(json, "netAmpereHours", report.RideBefore?.NetCharge?.AmpereHours, report.RideAfter?.NetCharge?.AmpereHours);
        if (report.Surplus is { } surplus)
        {
            json.WriteStartObject("surplus");
            json.Setting("setting", surplus.Setting);
            json.WriteNumber("rpm", surplus.After.Speed.RevolutionsPerMinute);
            Pair(json, "netA", surplus.Before.Net?.Amperes, surplus.After.Net?.Amperes);
            Pair(json, "intoFullBatteryA", surplus.Before.IntoFullBattery?.Amperes, surplus.After.IntoFullBattery?.Amperes);
            Pair(json, "shuntHeatW", (double?)surplus.Before.ShuntHeat?.Watts, (double?)surplus.After.ShuntHeat?.Watts);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("surplus");
        }

        json.WriteEndObject();
    }

    private static double? Rpm(BreakEven breakEven) => breakEven.Outcome == BreakEvenOutcome.At ? breakEven.Speed?.RevolutionsPerMinute : null;

    private static void Pair(Utf8JsonWriter json, string name, double? before, double? after)
    {
        json.WriteStartObject(name);
        json.Number("before", before);
        json.Number("after", after);
        json.WriteEndObject();
    }
}
