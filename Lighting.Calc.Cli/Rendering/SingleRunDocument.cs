using System.Text.Json;
using Lighting.Calc.Cli.Commands;
using Lighting.Calc.Conductors;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The drop of one run described by options.</summary>
internal static class SingleRunDocument
{
    public static Document OfDrop(SingleRun run, WireSize wire)
    {
        ElectricPotential drop = VoltageDrop.Of(run.Current, run.WireLength, wire, run.Temperature);
        double percent = drop / run.Supply * 100;
        ElectricResistance resistance = wire.Resistance(run.WireLength, run.Temperature);
        return new Document(
            "Drop of one run",
            $"{Figures.Number(drop.Volts, 3)} V lost, {Figures.Number(percent, 2)} % of {Figures.Volts(run.Supply)}"
            + (drop.Volts > run.Supply.Volts ? ": more than there is, so this current cannot flow." : "."),
            [
                new Table(
                    [new("", "what"), new("", "value", true)],
                    [
                        ["wire", wire.Name], ["current", Figures.Amperes(run.Current)], ["wire there and back", $"{Figures.Number(run.WireLength.Meters, 2)} m"],
                        ["at", $"{Figures.Number(run.Temperature.DegreesCelsius, 0)} °C"], ["resistance", Figures.Ohms(resistance)],
                    ]),
                new SpreadsheetOnly(new Table(
                    [
                        new("wire", "wire"), new("current A", "currentA", true), new("wire m", "wireLengthM", true), new("°C", "temperatureC", true),
                        new("ohms", "resistanceOhm", true), new("drop V", "dropV", true), new("drop %", "dropPercent", true),
                    ],
                    [[wire.Name, Figures.Cell(run.Current), Figures.Cell(run.WireLength.Meters, 2), Figures.Cell(run.Temperature.DegreesCelsius, 0), Figures.Cell(resistance.Ohms, 4), Figures.Cell(drop.Volts, 3), Figures.Cell(percent, 2)]],
                    IsMain: true)),
                CommonBlocks.Safety,
            ]);
    }

    public static void WriteDrop(Utf8JsonWriter json, SingleRun run, WireSize wire)
    {
        ElectricPotential drop = VoltageDrop.Of(run.Current, run.WireLength, wire, run.Temperature);
        json.WriteString("wire", wire.Name);
        json.WriteNumber("currentA", run.Current.Amperes);
        json.WriteNumber("wireLengthM", run.WireLength.Meters);
        json.WriteNumber("supplyVoltageV", run.Supply.Volts);
        json.WriteNumber("temperatureC", run.Temperature.DegreesCelsius);
        json.WriteNumber("resistanceOhm", wire.Resistance(run.WireLength, run.Temperature).Ohms);
        json.WriteNumber("dropV", drop.Volts);
        json.WriteNumber("dropPercent", drop / run.Supply * 100);
    }
}
