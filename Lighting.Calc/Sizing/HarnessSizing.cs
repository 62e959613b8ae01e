namespace Lighting.Calc;

/// <summary>The wires of a whole harness: few sizes that hold every limit, with little copper.</summary>
/// <remarks>
/// Standard sizes for all runs together such that, in every setting: no lamp that the contacts join to both terminals
/// drops more than its limit; every wire is rated for its current and for the fuse that feeds
/// it or whose lamps return by it; every dead short is cleared, as <see cref="BikeCheck"/> judges it; and no wire
/// is smaller than the builder wants. Of those a choice of few different sizes, and then of little copper Σ area ×
/// length. Where the wires of some runs are open (<see cref="Run.WireIsOpen"/>) only those are chosen and the others
/// kept. Loads of every kind count as lamps. Every choice is checked in the solved network, since the rule "larger is
/// brighter" is not quite true: a larger wire to one lamp raises its current, which dims another on the same feed a
/// little. Where no listed wire keeps the drop of a lamp within its limit, the sizes hold every other limit, and a
/// finding states which one is not met and what would.
/// </remarks>
public static class HarnessSizing
{
    private const double EasedBy = 0.5;

    /// <summary>Chooses the wires.</summary>
    /// <param name="network">The harness.</param>
    /// <param name="options">By what to choose; null for the defaults.</param>
    /// <param name="cancellationToken">Ends it early with an exception.</param>
    /// <returns>The choice, with the limits it does not meet, or why none was found.</returns>
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
        var trial = new SizingTrial(problem);
        int[]? found = Find(problem, trial);
        // In a loop the wires decide which way a short takes, and with it which fuse a wire is behind.
        while (found is not null && problem.TakesFusesOf(found))
            found = Find(problem, trial);
        return new SizingReporter(problem, trial, found).Report();
    }

    private static int[]? Find(SizingProblem problem, SizingTrial trial)
    {
        var search = new SizingSearch(problem, trial);
        int[]? found = search.Find();
        // The wires are chosen for all other limits then, and for what the largest can do plus half of the limit.
        if (found is null && trial.NotKeptByLargest() is { IsEmpty: false } lamps)
        {
            foreach ((int lamp, double drop) in lamps)
                problem.Ease(lamp, Math.Min(1, drop + EasedBy * problem.Limits[lamp]));
            found = search.Find();
        }

        return found;
    }

    private static void Check(Bike bike, WireSizingOptions options)
    {
        if (!bike.HasNetwork)
            throw new ArgumentException("The bike has no runs: there is no wire to choose.", nameof(bike));
        if (options.AllowedDrop is { } drop && !(drop.DecimalFractions is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(options), drop, "The allowed drop is above 0 to below 100 %.");
        if (options.MostSizes < 1)
            throw new ArgumentOutOfRangeException(nameof(options), options.MostSizes, "One size at least is needed.");
        if (!((options.Check.Supply ?? bike.ChargingVoltage).Volts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.Check.Supply,
                "The supply voltage must be greater " + "than zero."
            );
        if (!(options.MinimumArea.SquareMillimeters >= 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.MinimumArea,
                "The minimum area must be zero or more."
            );
        if (options.Family is { } family && !Enum.IsDefined(family))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                family,
                $"A kind of wire is one of {string.Join(", ", Enum.GetNames<WireConstruction>())}."
            );
    }
}
