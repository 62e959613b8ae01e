using UnitsNet;

namespace Lighting.Calc;

/// <summary>The inrush current through a fuse when everything in a setting is switched on with cold
/// filaments.</summary>
/// <remarks>Of the settings in which no momentary contact is closed: momentary loads are added when the others are hot.
/// Where these draw nothing, of all.</remarks>
internal sealed record InrushCheck
{
    /// <summary>Current in the first instant.</summary>
    public ElectricCurrent Peak { get; init; }

    /// <summary>Current once the filaments are hot.</summary>
    public ElectricCurrent Steady { get; init; }

    /// <summary>Time after which half of the excess over <see cref="Steady"/> is gone; zero when there is
    /// none.</summary>
    public Duration HalfOfExcess { get; init; }

    /// <summary>
    /// The largest share of the fuse's melting energy used at any moment: ∫I²dt against I²·t of the shortest published
    /// opening time at the same effective current. Where the style has no published shortest times (glass), ∫I²dt of
    /// the surge against the nominal melting energy of the rating, and null where that is not published either.
    /// </summary>
    public Ratio? MeltingShare { get; init; }

    /// <summary>Whether the fuse is shown to survive; null where its melting energy is not published.</summary>
    public bool? Survives => MeltingShare is { } share ? share.DecimalFractions < 1 : null;

    /// <summary>The same in words.</summary>
    public string Explanation { get; init; } = null!;
}
