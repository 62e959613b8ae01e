namespace Lighting.Calc;

/// <summary>One bike drawn and solved: the values of its parts, and the results that the report is made of.</summary>
/// <param name="Values">Value of each part, by its place in <see cref="UncertainBike.Parts"/>.</param>
/// <param name="LeastVolts">For each lamp the lowest voltage where it is meant to be lit; infinity for one that is lit
/// nowhere.</param>
/// <param name="LastingVolts">The same without momentary switches worked that the lamp does not need.</param>
/// <param name="MostDrop">For each lamp the largest share of the voltage of the source that does not reach it there;
/// below zero for one that is lit nowhere.</param>
/// <param name="MostDropOf">Voltage of the source at that drop.</param>
/// <param name="MostVolts">For each lamp the highest voltage.</param>
/// <param name="FuseAmperes">For each fuse the highest current.</param>
/// <param name="ContinuousAmperes">For each fuse the highest continuous load.</param>
/// <param name="BreakEvenRpm">Engine speed from which the load is covered; infinity where it is covered nowhere, not a
/// number where it is unknown.</param>
/// <param name="RideAmpereHours">Charge gained over the ride; not a number where it is unknown.</param>
internal sealed record SampledBike(
    double[] Values,
    double[] LeastVolts,
    double[] LastingVolts,
    double[] MostDrop,
    double[] MostDropOf,
    double[] MostVolts,
    double[] FuseAmperes,
    double[] ContinuousAmperes,
    double BreakEvenRpm,
    double RideAmpereHours
);
