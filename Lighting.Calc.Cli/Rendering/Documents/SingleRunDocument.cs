using Lighting.Calc.Cli.Commands;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The drop, or the wire, of one run described by options.</summary>
internal static class SingleRunDocument
{
    public static Document OfDrop(SingleRun run, WireSize wire)
    {
        ElectricPotential drop = VoltageDrop.Calculate(run.Current, run.WireLength, wire, run.Temperature);
        double percent = drop / run.Supply * 100;
        ElectricResistance resistance = wire.Resistance(run.WireLength, run.Temperature);
        var columns = new Columns<SingleRun>
        {
            { "wire", "wire", _ => wire.Name },
            { "current A", "currentA", r => r.Current },
            { "wire m", "wireLengthM", r => r.WireLength.Meters },
            { "supplyVoltageV", r => r.Supply },
            { "°C", "temperatureC", r => r.Temperature.DegreesCelsius },
            { "ohms", "resistanceOhm", _ => resistance },
            { "drop V", "dropV", _ => drop },
            { "drop %", "dropPercent", _ => percent },
        };
        return new Document(
            "Drop of one run",
            $"{Figures.Number(drop.Volts, 3)} V lost, {Figures.Number(percent, 2)} % of {Figures.Volts(run.Supply)}"
            + (drop.Volts > run.Supply.Volts ? ": more than there is, so this current cannot flow." : "."),
            () =>
            [
                new Columns<(string What, string Value)> { { "", "what", r => r.What }, { "", "value", r => Figures.Right(r.Value) } }.Table(
                [
                    ("wire", wire.Name), ("current", Figures.Amperes(run.Current)), ("wire there and back", $"{Figures.Number(run.WireLength.Meters, 2)} m"),
                    ("at", $"{Figures.Number(run.Temperature.DegreesCelsius, 0)} °C"), ("resistance", Figures.Ohms(resistance)),
                ]),
                columns.Spreadsheet([run]),
                CommonBlocks.Safety,
            ],
            json => columns.Write(json, run));
    }

    public static Document OfWire(SingleRunOptions run, SingleRunResult result)
    {
        var columns = new Columns<SingleRunCandidate>
        {
            { "size", "wire", c => c.Wire.Name },
            { "drop V", "dropV", c => c.Drop, "F3" },
            { "drop %", "dropPercent", c => c.DropShare, "F2" },
            { "carries A", "ratingA", c => c.Rating.Current, Figures.Rated },
            { "drop", "holdsDrop", c => c.MeetsDrop },
            { "heat", "holdsCurrent", c => c.MeetsAmpacity },
            { run.Fuse is null ? null : "fuse", "holdsFuse", c => c.MeetsFuse },
            { "", "chosen", c => c.Wire == result.Chosen ? "take this" : "" },
            { "suits", c => c.Holds },
        };
        return new Document(
            "Wire of one run",
            result.Explanation + ".",
            () => [columns.Table(result.Neighbours()), columns.Spreadsheet(result.Candidates), CommonBlocks.Safety],
            json =>
            {
                json.Write("currentA", run.Current);
                json.Write("lengthM", run.Length.Meters);
                json.Write("supplyVoltageV", run.Voltage);
                json.Write("allowedDropPercent", run.AllowedDrop);
                json.Write("wire", result.Chosen?.Name);
                json.Write("explanation", result.Explanation);
                json.Write("sizes", columns.Only("wire", "dropV", "dropPercent", "ratingA", "suits"), result.Candidates);
            });
    }
}
