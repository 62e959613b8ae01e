using UnitsNet;

namespace Lighting.Calc;

/// <summary>One wire to be chosen without a bike: its current, its length and its limits.</summary>
public sealed record SingleRunOptions
{
    /// <summary>Steady current, above zero.</summary>
    public required ElectricCurrent Current { get; init; }

    /// <summary>Distance from source to load, above zero; the wire is twice as long unless
    /// <see cref="OneWay"/>.</summary>
    public required Length Length { get; init; }

    /// <summary>Voltage of the source, above zero.</summary>
    public required ElectricPotential Voltage { get; init; }

    /// <summary>Largest drop as a share of the source voltage, above 0 to below 100 %. Default 3 %.</summary>
    public Ratio AllowedDrop { get; init; } = Ratio.FromPercent(3);

    /// <summary>Rating of the fuse that feeds it, above zero; null for none.</summary>
    public ElectricCurrent? Fuse { get; init; }

    /// <summary>Resistance of everything else in the way (joints, switch, fuse), zero or more. Default none.</summary>
    public ElectricResistance OtherResistance { get; init; } = ElectricResistance.Zero;

    /// <summary>Whether the length is all the wire there is, the return being no wire (a frame) or a run of its
    /// own.</summary>
    public bool OneWay { get; init; }

    /// <summary>Conductor temperature, −60 °C to 250 °C, for the resistance. Default 20 °C.</summary>
    public Temperature WireTemperature { get; init; } = Temperature.FromDegreesCelsius(20);

    /// <summary>Air round the wire, −40 °C and above, for the rating. Default 30 °C, that of the published
    /// ratings.</summary>
    public Temperature Ambient { get; init; } = Temperature.FromDegreesCelsius(30);

    /// <summary>Loaded wires lying together, this one included; 1 or more.</summary>
    public int Bundle { get; init; } = 1;

    /// <summary>The kind of wire. Default metric cable.</summary>
    public WireConstruction Family { get; init; } = WireConstruction.MetricCable;

    /// <summary>Whether odd gauges may be chosen; see <see cref="WireSizingOptions.IncludeOddGauges"/>.</summary>
    public bool IncludeOddGauges { get; init; }

    /// <summary>Least copper area, for strength; zero or more. Default 0.5 mm² (20 AWG).</summary>
    public Area MinimumArea { get; init; } = Area.FromSquareMillimeters(0.5);
}
