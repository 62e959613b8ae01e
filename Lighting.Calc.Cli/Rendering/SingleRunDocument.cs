using System.Text.Json;
using Lighting.Calc.Cli.Commands;
using Lighting.Calc.Conductors;
using Lighting.Calc.WireSizing;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The drop, or the wire, of one run described by options.</summary>
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

    public static Document OfWire(SingleRunOptions run, SingleRunResult result) => new(
        "Wire of one run",
        result.Explanation + ".",
        [
            new Table(
                [
                    new("size", "wire"), new("drop V", "dropV", true), new("drop %", "dropPercent", true), new("carries A", "ratingA", true), new("drop", "holdsDrop"), new("heat", "holdsCurrent"),
                    .. run.Fuse is null ? Array.Empty<Column>() : [new("fuse", "holdsFuse")], new("", "chosen"),
                ],
                [.. result.Neighbours().Select(c => Row(run, result, c))]),
            new SpreadsheetOnly(new Table(
                [
                    new("size", "wire"), new("drop V", "dropV", true), new("drop %", "dropPercent", true), new("carries A", "ratingA", true), new("drop", "holdsDrop"), new("heat", "holdsCurrent"),
                    .. run.Fuse is null ? Array.Empty<Column>() : [new("fuse", "holdsFuse")], new("", "chosen"),
                ],
                [.. result.Candidates.Select(c => Row(run, result, c))],
                IsMain: true)),
            CommonBlocks.Safety,
        ]);

    public static void WriteWire(Utf8JsonWriter json, SingleRunOptions run, SingleRunResult result)
    {
        json.WriteNumber("currentA", run.Current.Amperes);
        json.WriteNumber("lengthM", run.Length.Meters);
        json.WriteNumber("supplyVoltageV", run.Voltage.Volts);
        json.WriteNumber("allowedDropPercent", run.AllowedDrop.Percent);
        json.WriteString("wire", result.Chosen?.Name);
        json.WriteString("explanation", result.Explanation);
        json.Array("sizes", result.Candidates, c =>
        {
            json.WriteString("wire", c.Wire.Name);
            json.WriteNumber("dropV", c.Drop.Volts);
            json.WriteNumber("dropPercent", c.DropShare.Percent);
            json.Number("ratingA", c.Rating.Current?.Amperes);
            json.WriteBoolean("suits", c.Holds);
        });
    }

    private static IReadOnlyList<Cell> Row(SingleRunOptions run, SingleRunResult result, SingleRunCandidate candidate) =>
    [
        candidate.Wire.Name, Figures.Cell(candidate.Drop.Volts, 3), Figures.Cell(candidate.DropShare.Percent, 2), CommonBlocks.Rating(candidate.Rating.Current?.Amperes),
        YesNo(candidate.HoldsDrop), YesNo(candidate.HoldsCurrent), .. run.Fuse is null ? Array.Empty<Cell>() : [YesNo(candidate.HoldsFuse)],
        candidate.Wire == result.Chosen ? "take this" : "",
    ];

    private static Cell YesNo(bool? holds) => holds switch { true => "yes", false => "no", null => "not known" };
}
