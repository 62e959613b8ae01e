using UnitsNet;

namespace Lighting.Calc;

/// <summary>Segment of a ride: one row of <c>ride.csv</c>.</summary>
/// <param name="Stretch">Name.</param>
/// <param name="Speed">Engine speed, zero or more.</param>
/// <param name="Duration">Duration, above zero.</param>
/// <param name="When">The switches held during it; a switch that is not named is off.</param>
public sealed record RideStretch(string Stretch, RotationalSpeed Speed, Duration Duration, Condition When)
{
    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }
}
