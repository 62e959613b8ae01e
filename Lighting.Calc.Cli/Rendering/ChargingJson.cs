using System.Text.Json;
using Lighting.Calc.Charging;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>charging</c>.</summary>
internal static class ChargingJson
{
    public static void Write(Utf8JsonWriter json, ChargingSystem system, ChargingReport report)
    {
        json.WriteString("bike", system.Bike.Name);
        json.WriteNumber("chargingVoltageV", system.Bike.ChargingVoltage.Volts);
        json.Array("balances", report.Balances, balance =>
        {
            json.Setting("setting", balance.Setting);
            json.WriteNumber("demandA", balance.Demand.Amperes);
            json.WriteString("breakEven", Outcome(balance.BreakEven.Outcome));
            json.Number("breakEvenRpm", balance.BreakEven.Speed?.RevolutionsPerMinute);
            json.Array("points", balance.Over(system.Grid()), point =>
            {
                json.WriteNumber("rpm", point.Speed.RevolutionsPerMinute);
                json.Number("outputA", point.Output.Current?.Amperes);
                json.Number("netA", point.Net?.Amperes);
            });
        });
        if (report.Ride is { } ride)
        {
            json.WriteStartObject("ride");
            json.Number("netAmpereHours", ride.NetCharge?.AmpereHours);
            json.Number("finalStateOfCharge", ride.FinalStateOfCharge?.DecimalFractions);
            json.Array("stretches", ride.Stretches, stretch =>
            {
                json.WriteString("stretch", stretch.Stretch.Stretch);
                json.WriteNumber("rpm", stretch.Stretch.Speed.RevolutionsPerMinute);
                json.WriteNumber("minutes", stretch.Stretch.Duration.Minutes);
                json.WriteNumber("demandA", stretch.Demand.Amperes);
                json.Number("netAmpereHours", stretch.NetCharge?.AmpereHours);
                json.Number("stateOfCharge", stretch.StateOfCharge?.DecimalFractions);
            });
            json.WriteEndObject();
        }

        json.Array("standing", report.Standing, standing =>
        {
            json.Setting("setting", standing.Setting);
            json.WriteNumber("loadA", standing.Load.Amperes);
            json.WriteNumber("toStateOfCharge", standing.To.DecimalFractions);
            json.Number("timeH", standing.Time?.Hours);
        });
        json.Findings(report.Findings);
    }

    private static string Outcome(BreakEvenOutcome outcome) => outcome switch
    {
        BreakEvenOutcome.At => "at",
        BreakEvenOutcome.Always => "always",
        BreakEvenOutcome.Never => "never",
        BreakEvenOutcome.BelowCurve => "below curve",
        BreakEvenOutcome.NotKnown => "not known",
        _ => throw new InvalidOperationException($"Unknown outcome {outcome}."),
    };
}
