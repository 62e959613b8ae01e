using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Wire as the trade writes it, against printed areas, resistances, ratings and diameters.</summary>
public class StrandedCableTests
{
    // "Cable technical info", November 2012: strands and the area printed for them; 50/0.25 is printed 1 % above the
    // area of its strands.
    [Theory]
    [InlineData(7, 0.20, 0.22)]
    [InlineData(14, 0.20, 0.44)]
    [InlineData(30, 0.25, 1.47)]
    [InlineData(50, 0.25, 2.48)]
    [InlineData(19, 0.29, 1.25)]
    [InlineData(11, 0.30, 0.78)]
    [InlineData(16, 0.30, 1.13)]
    [InlineData(41, 0.30, 2.90)]
    [InlineData(112, 0.30, 7.90)]
    [InlineData(16, 0.32, 1.28)]
    [InlineData(65, 0.32, 5.22)]
    [InlineData(10, 0.25, 0.49)]
    [InlineData(7, 0.30, 0.49)]
    [InlineData(26, 0.30, 1.84)]
    [InlineData(7, 0.32, 0.56)]
    [InlineData(11, 0.32, 0.88)]
    [InlineData(14, 0.32, 1.13)]
    [InlineData(26, 0.32, 2.08)]
    [InlineData(41, 0.32, 3.30)]
    [Against("stranded cable", "\"Cable technical info\", November 2012, areas", CheckKind.Model)]
    public void Printed_area_of_counted_strands(int strands, double millimetres, double printed) =>
        Publication.Meets(
            printed,
            StrandedCable.Of(strands, Length.FromMillimeters(millimetres)).CopperArea.SquareMillimeters,
            Math.Max(0.006, printed * 0.0105)
        );

    // Strands counted on one car in a series of articles on its wiring: 14, 28 and 44 of 0.011 inch are 1694, 3388 and
    // 5324 circular mils. A circular mil is pi/4 of a square mil.
    [Theory]
    [InlineData(14, 1694)]
    [InlineData(28, 3388)]
    [InlineData(44, 5324)]
    [Against(
        "stranded cable",
        "a series of articles on the wiring of one car, circular mils of counted strands",
        CheckKind.Arithmetic
    )]
    public void Measured_inch_strands_in_circular_mils(int strands, double printed)
    {
        double squareInches = StrandedCable.Of(strands, Length.FromInches(0.011)).CopperArea.SquareInches;
        Publication.Meets(printed, squareInches * 1e6 / (Math.PI / 4), 0.5);
    }

    // "Guidance on Choice and Use of Cable": the drop over 5 m at the full current of ordinary PVC cable, each figure
    // printed.
    [Theory]
    [InlineData("9/0.30", 5.75, 0.845)]
    [InlineData("14/0.30", 8.75, 0.827)]
    [InlineData("21/0.30", 12.75, 0.797)]
    [InlineData("28/0.30", 17.5, 0.823)]
    [InlineData("35/0.30", 21.75, 0.816)]
    [InlineData("44/0.30", 25.5, 0.765)]
    [Against(
        "stranded cable",
        "\"Guidance on Choice and Use of Cable\", drop over 5 m at full current",
        CheckKind.Model
    )]
    public void Printed_current_and_drop_of_ordinary_cable(string size, double amperes, double printedDrop)
    {
        WireSize wire = Wire(size);
        Assert.Equal(amperes, Rated(wire, CableKind.Ordinary), 1e-9);
        ElectricPotential drop = VoltageDrop.Calculate(
            ElectricCurrent.FromAmperes(amperes),
            Length.FromMeters(5),
            wire,
            Temperature.FromDegreesCelsius(20)
        );
        Publication.Meets(printedDrop, drop.Volts, 0.0006);
    }

    // The same table's ohms for a kilometre, 5 % to 8 % over copper of the counted strands.
    [Theory]
    [InlineData(9, 29.4)]
    [InlineData(14, 18.9)]
    [InlineData(21, 12.5)]
    [InlineData(28, 9.4)]
    [InlineData(35, 7.5)]
    [InlineData(44, 6.0)]
    [Against(
        "stranded cable",
        "\"Guidance on Choice and Use of Cable\", ohms against copper of the strands",
        CheckKind.Model
    )]
    public void Printed_ohms_of_counted_strands(int strands, double printedOhms)
    {
        var area = Area.FromSquareMillimeters(strands * Math.PI / 4 * 0.3 * 0.3);
        Publication.Misses(
            printedOhms,
            Copper.Resistance(Length.FromKilometers(1), area, Temperature.FromDegreesCelsius(20)).Ohms
                * AmericanWireGauge.StrandingFactor,
            0.05,
            0.085
        );
    }

    // Trade range "Automotive Cables": thin wall, current and largest diameter.
    [Theory]
    [InlineData("16/0.20", 11, 1.7)]
    [InlineData("32/0.20", 16.5, 2.1)]
    [InlineData("28/0.30", 25, 2.8)]
    [InlineData("44/0.30", 33, 3.4)]
    [InlineData("65/0.30", 42, 4.1)]
    [InlineData("120/0.30", 63, 5.6)]
    [Against("stranded cable", "trade range \"Automotive Cables\", thin wall", CheckKind.Copied)]
    public void Printed_current_and_diameter_of_thin_wall_cable(string size, double amperes, double millimetres)
    {
        WireSize wire = Wire(size);
        Publication.Meets(amperes, Rated(wire, CableKind.ThinWall), 1e-9);
        Publication.Meets(millimetres, CableDiameter.Largest(wire, CableKind.ThinWall)!.Value.Millimeters, 1e-9);
    }

    // "Making your own looms": ratings of old inch sizes. A kind that is stated is taken instead.
    [Theory]
    [InlineData("9/.012", 4)]
    [InlineData("14/.010", 6)]
    [InlineData("14/.012", 7)]
    [InlineData("28/.012", 14)]
    [InlineData("44/.012", 22)]
    [Against("stranded cable", "\"Making your own looms\", ratings of old inch sizes", CheckKind.Copied)]
    public void Printed_rating_of_old_inch_cable(string size, double amperes)
    {
        Publication.Meets(amperes, Rated(Wire(size), null), 0.02);
        Assert.True(Rated(Wire(size), CableKind.ThinWall) > amperes);
    }

    // One millimetre squared by kind of cable: ordinary 8.75 A and thin wall 16.5 A (Classic Bike, March 2021), 19 A in
    // free air (DIN VDE 0298-4).
    [Theory]
    [InlineData(CableKind.Ordinary, 8.75)]
    [InlineData(CableKind.ThinWall, 16.5)]
    [InlineData(CableKind.FreeAir, 19)]
    [Against(
        "stranded cable",
        "Classic Bike, March 2021, and DIN VDE 0298-4, 1 mm2 by kind of cable",
        CheckKind.Copied
    )]
    public void One_square_millimetre_by_kind_of_cable(CableKind kind, double printed)
    {
        Publication.Meets(printed, Rated(Wire("1 mm2"), kind), 1e-9);
        Publication.Meets(printed, Rated(Wire("14/0.30"), kind), 1e-9);
    }

    // BS 3737:1964, diameters in inches.
    [Theory]
    [InlineData(4, 0.232)]
    [InlineData(10, 0.128)]
    [InlineData(16, 0.064)]
    [InlineData(18, 0.048)]
    [InlineData(22, 0.028)]
    [InlineData(29, 0.0136)]
    [Against("imperial gauge", "BS 3737:1964, diameters", CheckKind.Copied)]
    public void BS_3737_diameter(int gauge, double inches) =>
        Publication.Meets(inches, StandardWireGauge.Diameter(gauge).Inches, 1e-9);

    private static double Rated(WireSize wire, CableKind? kind) =>
        CurrentRating.Calculate(wire, Temperature.FromDegreesCelsius(30), 1, kind).Current!.Value.Amperes;

    private static WireSize Wire(string name) =>
        WireTable.TryFind(name, out WireSize? wire) ? wire : throw new ArgumentException(name);
}
