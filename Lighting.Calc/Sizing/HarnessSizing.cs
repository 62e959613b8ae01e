namespace Lighting.Calc;

/// <summary>The wires of a whole harness: sizes that hold every limit with little copper.</summary>
/// <remarks>
/// Standard sizes of small Σ area × length for all runs together such that, in every setting:
/// no lamp that the contacts join to both terminals loses more than the allowed share of the source volts (feed,
/// joints, switches, fuses, return and, unless told otherwise, the battery); every run's current rating is at least its
/// steady current and the rating of any fuse that feeds it; every dead short opens its fuse in time, as
/// <see cref="Calc.FuseCheck"/> judges it; and no run is thinner than the builder wants. Of choices of equal copper the
/// one of fewest different sizes is taken, then the one that changes fewest runs. Loads of every kind in the list count
/// as lamps. The choice is checked in the network itself, since the rule "thicker is brighter" is not quite true: a
/// thicker wire to one lamp lets it draw more, which dims another on the same feed a little.
/// </remarks>
public static class HarnessSizing
{
    /// <summary>Chooses the wires.</summary>
    /// <param name="network">The harness.</param>
    /// <param name="options">By what to choose; null for the defaults.</param>
    /// <param name="cancellationToken">Ends it early with an exception.</param>
    /// <returns>The choice, or why none was found.</returns>
    /// <exception cref="ArgumentException">The bike has no runs, or the condition leaves no setting.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is outside its range.</exception>
    /// <exception cref="NetworkNotSolvedException">The battery is shorted in a setting, or no solution was found for
    /// the wires as fitted or as chosen.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static WireSizingResult Size(
        HarnessNetwork network,
        WireSizingOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        options ??= new WireSizingOptions();
        Check(network.Bike, options);
        var problem = new SizingProblem(network, options, cancellationToken);
        return new SizingReporter(problem, new SizingSearch(problem).Find()).Report();
    }

    private static void Check(Bike bike, WireSizingOptions options)
    {
        if (!bike.HasNetwork)
            throw new ArgumentException("The bike has no runs: there is no wire to choose.", nameof(bike));
        double allowed = (options.AllowedDrop ?? bike.AllowedDrop).DecimalFractions;
        if (!(allowed > 0 && allowed < 1))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                allowed,
                "The allowed drop is above 0 to below 100 %."
            );
        if (!((options.Supply ?? bike.ChargingVoltage).Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(options), options.Supply, "The supply volts are above zero.");
        if (!(options.MinimumArea.SquareMillimeters >= 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.MinimumArea,
                "The least area is zero or more."
            );
        if (options.Family is { } family && !Enum.IsDefined(family))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                family,
                $"A kind of wire is one of {string.Join(", ", Enum.GetNames<WireConstruction>())}."
            );
    }
}
