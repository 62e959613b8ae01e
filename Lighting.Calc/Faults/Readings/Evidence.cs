namespace Lighting.Calc;

/// <summary>A reading beside what every fault predicts for it.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Place">Where it was taken.</param>
/// <param name="Value">Voltage, current or the logarithm of resistance; for a look its number.</param>
/// <param name="Predicted">The predictions.</param>
/// <param name="Times">How often it was read with the same result.</param>
internal sealed record Evidence(Reading Reading, TestPlace Place, double Value, Column Predicted, int Times = 1)
{
    // Who misreads once seldom misreads alike again: common practice, no source.
    private const double SameBlunder = 0.1;

    /// <summary>Probability that it is plainly wrong.</summary>
    /// <param name="share">That of a single reading.</param>
    public double Blunder(double share) => share * Math.Pow(SameBlunder, Times - (IsDrain ? 0 : 1));

    /// <summary>Whether it is a drain: who puts an ammeter into the lead of the battery watches it for a while, so that
    /// it counts as read twice.</summary>
    public bool IsDrain { get; init; }

    /// <summary>Density of this reading where something that is not listed has changed it: see
    /// <see cref="NotListed"/>.</summary>
    public double Changed { get; init; }

    public bool IsLook => Place.Instrument.IsLook();
}
