using System.Text.Json;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The JSON of <c>load</c>: every setting with its points, circuits, lamps, runs and fuses.</summary>
internal static class LoadJson
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
        { "batteryVoltageV", b => b.BatteryVoltage },
        { "generatorCurrentA", b => b.GeneratorCurrent },
        { "batteryCurrentA", b => b.BatteryCurrent },
        { "regulatorCurrentA", b => b.RegulatorCurrent },
    };

    public static void Write(Utf8JsonWriter json, BikeReport report)
    {
        json.Write("bike", report.Bike.Name);
        json.Write("supplyVoltageV", report.SupplyVoltage);
        json.Write("settings", Settings(report), report.Settings);
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
