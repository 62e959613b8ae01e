using UnitsNet;

namespace Lighting.Calc.Cli.Rendering;

/// <summary>What one cable is, from its strands or another size: its copper, the sizes nearest to it, its resistance
/// and what it is rated for as each kind of cable.</summary>
internal static class CableDocument
{
    private static readonly Temperature s_air = Temperature.FromDegreesCelsius(30);

    private static readonly Columns<WireSize> s_columns = new()
    {
        { "cable", "wire", w => w.Name },
        { "copper mm²", "copperMm2", w => w.CopperArea.SquareMillimeters, "0.00#" },
        { "nearest metric", "nearestMetric", w => Nearest(w, WireConstruction.MetricCable) },
        { "nearest gauge", "nearestGauge", w => Nearest(w, WireConstruction.SolidGauge) },
        { "ohm/m", "resistanceOhm", w => w.Resistance(Length.FromMeters(1), Temperature.FromDegreesCelsius(20)) },
        { "ordinary A", "ordinaryRatingA", w => Rated(w, CableKind.Ordinary), Figures.Rated },
        { "thin wall A", "thinWallRatingA", w => Rated(w, CableKind.ThinWall), Figures.Rated },
        { "free air A", "freeAirRatingA", w => Rated(w, CableKind.FreeAir), Figures.Rated },
        { "as found A", "unstatedRatingA", w => Rated(w, null), Figures.Rated },
        { "ordinary mm", "ordinaryDiameterMm", w => Diameter(w, CableKind.Ordinary), "0.0#" },
        { "thin wall mm", "thinWallDiameterMm", w => Diameter(w, CableKind.ThinWall), "0.0#" },
    };

    public static Document Of(WireSize wire) =>
        new(
            $"Cable: {wire.Name}",
            $"{Figures.Number(wire.CopperArea.SquareMillimeters, 2)} mm² of copper: nearest to "
                + $"{Nearest(wire, WireConstruction.MetricCable)} and {Nearest(wire, WireConstruction.SolidGauge)}.",
            Cautions.OfAnyBike,
            () => [Table(wire), s_columns.Spreadsheet([wire])],
            json => s_columns.Write(json, wire)
        );

    private static Table Table(WireSize wire)
    {
        double milliohms = wire.Resistance(Length.FromMeters(1), Temperature.FromDegreesCelsius(20)).Milliohms;
        var rows = new List<(string What, string Value)> { ("at 20 °C", $"{Figures.Number(milliohms, 2)} mΩ/m") };
        foreach ((CableKind kind, string words) in Kinds)
        {
            string diameter = CableDiameter.Largest(wire, kind) is { } across
                ? $", at most {Figures.Number(across.Millimeters, 1)} mm across"
                : "";
            rows.Add((words, Amperes(Rated(wire, kind)) + diameter));
        }

        if (wire.Construction == WireConstruction.InchStrands)
            rows.Add(("as old inch cable", Amperes(Rated(wire, null))));
        return new Columns<(string What, string Value)>
        {
            { "one wire alone in air of 30 °C", "what", r => r.What },
            { "", "value", r => Figures.Right(r.Value) },
        }.Table(rows);
    }

    private static (CableKind Kind, string Words)[] Kinds { get; } =
        [
            (CableKind.Ordinary, "as ordinary PVC cable"),
            (CableKind.ThinWall, "as thin-wall cable"),
            (CableKind.FreeAir, "spaced in free air"),
        ];

    private static string Amperes(ElectricCurrent? rated) =>
        rated is { } known ? $"{Figures.Number(known.Amperes, 1)} A" : "not published";

    private static ElectricCurrent? Rated(WireSize wire, CableKind? kind) =>
        CurrentRating.Calculate(wire, s_air, 1, kind).Current;

    private static double? Diameter(WireSize wire, CableKind kind) => CableDiameter.Largest(wire, kind)?.Millimeters;

    private static string Nearest(WireSize wire, WireConstruction construction) =>
        WireTable
            .Of(construction)
            .MinBy(w => Math.Abs(Math.Log(w.CopperArea.SquareMillimeters / wire.CopperArea.SquareMillimeters)))!
            .Name;
}
