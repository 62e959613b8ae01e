using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What changes when lamps of a bike are replaced, usually by LEDs.</summary>
public static class Swap
{
    /// <summary>The bike with its lamps replaced.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="replacements">What takes whose place, each lamp at most once; a lamp's quantity, points and
    /// condition stay.</param>
    /// <exception cref="ArgumentException">A replacement names no lamp of the bike, or a lamp is named
    /// twice.</exception>
    public static Bike Apply(Bike bike, IEnumerable<LampReplacement> replacements)
    {
        ArgumentNullException.ThrowIfNull(bike);
        ArgumentNullException.ThrowIfNull(replacements);
        FittedLamp[] lamps = [.. bike.Lamps];
        var seen = new HashSet<string>(Name.Comparer);
        foreach (LampReplacement replacement in replacements)
        {
            int index = Array.FindIndex(lamps, l => Name.Equal(l.Lamp, replacement.Lamp));
            if (index < 0)
                throw new ArgumentException(
                    $"The bike has no lamp '{replacement.Lamp}'; its lamps are "
                        + $"{string.Join(", ", lamps.Select(l => l.Lamp))}.",
                    nameof(replacements)
                );
            if (!seen.Add(replacement.Lamp))
                throw new ArgumentException($"The lamp '{replacement.Lamp}' is replaced twice.", nameof(replacements));
            lamps[index] = lamps[index] with { Specification = replacement.Replacement };
        }

        return bike with
        {
            Lamps = [.. lamps],
        };
    }

    /// <summary>Every lamp replaced by the generic LED of its socket class and the bike's voltage.</summary>
    /// <param name="bike">The bike.</param>
    /// <returns>The replacements, and the lamps for which there is none. Loads that are no lamps are in
    /// neither.</returns>
    /// <exception cref="ArgumentNullException">The bike is null.</exception>
    public static AllLedProposal ToLed(Bike bike)
    {
        ArgumentNullException.ThrowIfNull(bike);
        return AllLed.Of(bike);
    }

    /// <summary>Compares a bike before and after a swap.</summary>
    /// <param name="bike">The bike before.</param>
    /// <param name="replacements">What takes whose place.</param>
    /// <param name="options">How it is judged; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">A replacement names no lamp of the bike or one twice, or the condition names
    /// what the bike does not have or leaves no setting that can be solved.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="NetworkNotSolvedException">A stretch of the ride has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SwapReport Evaluate(
        Bike bike,
        IEnumerable<LampReplacement> replacements,
        CheckOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        ImmutableArray<LampReplacement> all = [.. replacements];
        return new SwapReporter(bike, Apply(bike, all), all, options ?? new CheckOptions()).Report(cancellationToken);
    }
}
