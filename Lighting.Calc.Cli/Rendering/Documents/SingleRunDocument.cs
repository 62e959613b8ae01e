using Lighting.Calc.Cli.Commands;
using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>The drop, or the wire, of one run described by options.</summary>
internal static class SingleRunDocument
{
    // The air of the published current ratings.
    private static readonly Temperature s_air = Temperature.FromDegreesCelsius(30);

    public static Document OfDrop(SingleRun run, WireSize wire)
    {
        ElectricPotential drop = VoltageDrop.Calculate(run.Current, run.WireLength, wire, run.Temperature);
        double percent = drop / run.Supply * 100;
        ElectricResistance resistance = wire.Resistance(run.WireLength, run.Temperature);
        ElectricCurrent? rating = Rating(wire).Current;
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
            { "rated A", "ratingA", _ => rating },
            { "suits", _ => IsRatedFor(wire, run.Current) },
        };
        return new Document(
            "Voltage drop of one run",
            $"Voltage drop {Figures.Volts(drop)}, {Figures.Number(percent, 1)} % of {Figures.Volts(run.Supply)}"
                + (drop.Volts > run.Supply.Volts ? ": more than the supply, so this current cannot flow." : ".")
                + (IsRatedFor(wire, run.Current) ? "" : $" The wire is not rated for it: {Rating(wire).Explanation}."),
            Cautions.OfAnyBike,
            () =>
                [
                    new Columns<(string What, string Value)>
                    {
                        { "", "what", r => r.What },
                        { "", "value", r => Figures.Right(r.Value) },
                    }.Table([
                        ("wire", wire.Name),
                        ("current", Figures.Amperes(run.Current)),
                        ("wire length", $"{Figures.Number(run.WireLength.Meters, 2)} m"),
                        ("temperature", $"{Figures.Number(run.Temperature.DegreesCelsius, 0)} °C"),
                        ("resistance", Figures.Ohms(resistance)),
                        ("rated", rating is { } amperes ? Figures.Amperes(amperes) : "not published"),
                    ]),
                    columns.Spreadsheet([run]),
                ],
            json => columns.Write(json, run)
        );
    }

    /// <summary>Whether a wire alone, in the air of its published rating, is rated for a current.</summary>
    public static bool IsRatedFor(WireSize wire, ElectricCurrent current) =>
        Rating(wire).Current is { } rated && current.Amperes <= rated.Amperes;

    private static CurrentRating Rating(WireSize wire) =>
        CurrentRating.Calculate(wire, s_air, bundle: 1);

    public static Document OfWire(SingleRunOptions run, SingleRunResult result)
    {
        var columns = new Columns<SingleRunCandidate>
        {
            { "size", "wire", c => c.Wire.Name },
            { "drop V", "dropV", c => c.Drop },
            { "drop %", "dropPercent", c => c.DropShare },
            { "rated A", "ratingA", c => c.Rating.Current, Figures.Rated },
            { "drop", "holdsDrop", c => c.MeetsDrop },
            { "heat", "holdsCurrent", c => c.MeetsAmpacity },
            { run.Fuse is null ? null : "fuse", "holdsFuse", c => c.MeetsFuse },
            { "", "chosen", c => c.Wire == result.Chosen ? "fit this" : "" },
            { "suits", c => c.Holds },
        };
        return new Document(
            "Wire of one run",
            Figures.Sentence(result.Explanation),
            Cautions.OfAnyBike,
            () => [columns.Table(result.Neighbours()), columns.Spreadsheet(result.Candidates)],
            json =>
            {
                json.Write("currentA", run.Current);
                json.Write("lengthM", run.Length.Meters);
                json.Write("supplyVoltageV", run.Voltage);
                json.Write("allowedDropPercent", run.AllowedDrop);
                json.Write("wire", result.Chosen?.Name);
                json.Write("explanation", result.Explanation);
                json.Write(
                    "sizes",
                    columns.Only("wire", "dropV", "dropPercent", "ratingA", "suits"),
                    result.Candidates
                );
            }
        );
    }
}
