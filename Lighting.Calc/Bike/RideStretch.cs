using UnitsNet;

namespace Lighting.Calc;

/// <summary>Part of a ride: one row of <c>ride.csv</c>.</summary>
/// <param name="Stretch">Its name.</param>
/// <param name="Speed">Engine speed, zero or more.</param>
/// <param name="Duration">How long, above zero.</param>
/// <param name="When">The switches held during it; a switch that is not named is off.</param>
public sealed record RideStretch(string Stretch, RotationalSpeed Speed, Duration Duration, Condition When);
