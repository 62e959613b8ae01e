using UnitsNet;

namespace Lighting.Calc;

/// <summary>One standard fuse rating: a row of the published fuse table.</summary>
/// <param name="Style">Construction.</param>
/// <param name="Rating">Rated current, as marked.</param>
/// <param name="Colour">Body colour of a blade fuse; empty for glass.</param>
/// <param name="ColdResistance">Typical cold resistance; null if not published.</param>
internal sealed record PublishedFuse(
    FuseStyle Style,
    ElectricCurrent Rating,
    string Colour,
    ElectricResistance? ColdResistance
);
