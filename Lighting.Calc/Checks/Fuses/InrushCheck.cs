using UnitsNet;

namespace Lighting.Calc;

/// <summary>The inrush current through a fuse when everything in a setting is switched on with cold
/// filaments.</summary>
/// <remarks>Of the settings in which no momentary contact is closed: momentary loads are added when the others are hot.
/// Where these draw nothing, of all.</remarks>
/// <param name="Peak">Current in the first instant.</param>
/// <param name="Steady">Current once the filaments are hot.</param>
/// <param name="HalfOfExcess">Time after which half of the excess over <see cref="Steady"/> is gone; zero when there
/// is none.</param>
/// <param name="MeltingShare">The largest share of the fuse's melting energy used at any moment: ∫I²dt against I²·t
/// of the shortest published opening time at the same effective current. Where the style has no published shortest
/// times (glass), ∫I²dt of the surge against the nominal melting energy of the rating, and null where that is not
/// published either.</param>
/// <param name="Explanation">Whether the fuse is shown to survive, in words.</param>
internal sealed record InrushCheck(
    ElectricCurrent Peak,
    ElectricCurrent Steady,
    Duration HalfOfExcess,
    Ratio? MeltingShare,
    string Explanation
)
{
    /// <summary>Whether the fuse is shown to survive; null where its melting energy is not published.</summary>
    public bool? Survives => MeltingShare is { } share ? share.DecimalFractions < 1 : null;
}
