using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>check</c> and <c>load</c>.</summary>
internal static class ReportJson
{
    private static readonly Columns<RunState> s_run = new()
    {
        { "run", r => r.Run.Name },
        { "currentA", r => r.Current },
        { "dropV", r => r.WireDrop + r.JointDrop },
        { "resistanceOhm", r => r.Resistance },
    };

    private static readonly Columns<BusState> s_bus = new()
    {
        { "rpm", b => b.Speed },
        { "generatorCurrentA", b => b.GeneratorCurrent },
        { "batteryCurrentA", b => b.BatteryCurrent },
        { "regulatorCurrentA", b => b.RegulatorCurrent },
    };

    private static readonly Columns<VerdictCause> s_cause = new()
    {
        { "cause", c => c.Text },
        { "remedy", c => c.Remedy },
    };

    private static readonly Columns<ChargingReport> s_charging = new()
    {
        { "breakEvenRpm", c => c.Worst?.BreakEven.Speed },
        { "netAmpereHours", c => c.Ride?.NetCharge },
    };

    public static void Write(Utf8JsonWriter json, BikeReport report, ToleranceReport? tolerance = null)
    {
        json.Write("bike", report.Bike.Name);
        json.Write("supplyVoltageV", report.SupplyVoltage);
        json.Write("verdict", report.VerdictText);
        json.Write("notJudged", report.NotJudged);
        json.Write("causes", s_cause, report.Causes);
        json.Write("settings", Settings(report), report.Settings);
        json.Write("fuses", CommonBlocks.Fuse, report.Fuses);
        if (report.Charging is { } charging)
            json.Write("charging", s_charging, charging);
        if (report.Engine is { } engine)
            json.Write("engine", EngineBlocks.Columns, engine);
        if (tolerance is not null)
            ToleranceDocument.Write(json, tolerance);
        json.Write("findings", CommonBlocks.Finding, report.Findings);
    }

    private static Columns<OperatingPoint> Settings(BikeReport report) =>
        new()
        {
            { "setting", p => p.Setting },
            { "totalCurrentA", p => p.TotalCurrent },
            { "supplyVoltageV", p => p.SupplyVoltage },
            { "bus", s_bus, p => p.Bus },
            { "points", CommonBlocks.Point, p => p.Points },
            { "circuits", CircuitLoad.Columns, p => CircuitLoad.Of(p) },
            { "lamps", CommonBlocks.Lamp, p => p.Lamps },
            { "runs", s_run, p => p.Runs },
            {
                "fuses",
                new Columns<FuseState>
                {
                    { "fuse", f => f.Fuse.Name },
                    { "ratingA", f => f.Fuse.Rating },
                    { "currentA", f => f.Current },
                    {
                        "headroomA",
                        f => report.Fuses.First(s => s.Fuse.Name == f.Fuse.Name).Steady.UsableCurrent - f.Current
                    },
                },
                p => p.Fuses
            },
        };
}
