using UnitsNet;

namespace Lighting.Calc;

/// <summary>One standard fuse rating: a row of the published fuse table.</summary>
internal sealed record PublishedFuse
{
    internal PublishedFuse(
        FuseStyle style,
        ElectricCurrent rating,
        string colour,
        ElectricResistance? coldResistance,
        string source
    ) => (Style, Rating, Colour, ColdResistance, Source) = (style, rating, colour, coldResistance, source);

    /// <summary>Construction.</summary>
    public FuseStyle Style { get; }

    /// <summary>Rated current, as marked.</summary>
    public ElectricCurrent Rating { get; }

    /// <summary>Body colour of a blade fuse; empty for glass.</summary>
    public string Colour { get; }

    /// <summary>Typical cold resistance; null if not published.</summary>
    public ElectricResistance? ColdResistance { get; }

    /// <summary>Source of the row.</summary>
    public string Source { get; }
}
