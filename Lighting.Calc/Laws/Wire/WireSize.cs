using UnitsNet;

namespace Lighting.Calc;

/// <summary>One standard size of wire: its copper and its resistance.</summary>
public sealed record WireSize
{
    internal WireSize(string name, WireConstruction construction, Area copperArea, double ohmsPerMetreAt20)
    {
        Name = name;
        Construction = construction;
        CopperArea = copperArea;
        OhmsPerMetreAt20 = ohmsPerMetreAt20;
    }

    /// <summary>The name lists use: <c>16 AWG</c>, <c>16 AWG stranded</c>, <c>1.25 mm2</c>, <c>14/0.30</c>,
    /// <c>14/.012</c> or <c>18 SWG</c>.</summary>
    public string Name { get; }

    /// <summary>Basis of its resistance.</summary>
    public WireConstruction Construction { get; }

    /// <summary>Nominal cross-section of its copper.</summary>
    public Area CopperArea { get; }

    internal double OhmsPerMetreAt20 { get; }

    /// <summary>Whether it is named by an American gauge.</summary>
    internal bool IsGauge => Construction is WireConstruction.SolidGauge or WireConstruction.StrandedGauge;

    /// <summary>Resistance of a length, one way.</summary>
    /// <remarks>Gauges: annealed copper of the nominal area, by <see cref="AmericanWireGauge"/>. Metric cable: the
    /// maximum of the standard at 20 °C (tables/conductors-metric.csv). Counted strands: <see cref="StrandedCable"/>,
    /// and <see cref="StandardWireGauge"/>. All follow the temperature as copper does.</remarks>
    /// <param name="length">Length of this one conductor, zero or more.</param>
    /// <param name="temperature">Conductor temperature, −60 °C to 250 °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public ElectricResistance Resistance(Length length, Temperature temperature)
    {
        if (!(length.Meters >= 0))
            throw new ArgumentOutOfRangeException(nameof(length), length, "Length must be zero or more.");
        return ElectricResistance.FromOhms(
            OhmsPerMetreAt20 * length.Meters * Copper.ResistanceFactor(temperature).DecimalFractions
        );
    }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
