using System.Collections.Concurrent;

namespace Lighting.Calc;

/// <summary>Checks many bikes, as a shop's catalogue has them, and works out once what follows from their wiring
/// alone.</summary>
/// <remarks>
/// Bikes are wired alike when their lists name the same parts, points, positions and conditions; wires, lamps,
/// contacts, fuses and charging may differ. What <see cref="BikeCheck"/> says of a bike is what this says of it. Safe
/// to share between threads; keeps what it knows of 32 wirings at most, so that its memory does not grow with the
/// number of bikes.
/// </remarks>
public sealed class CatalogueCheck
{
    private const int MostKept = 32;
    private const int MostMet = 4096;

    private readonly ConcurrentDictionary<string, Wiring> _wirings = new();

    // By the hash of its key, a wiring that was met. One that is never met again is not kept: the collector would have
    // to move each of a catalogue of bikes wired their own way.
    private readonly ConcurrentDictionary<int, bool> _met = new();

    /// <summary>Checks a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">Options of the check; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The same as <see cref="BikeCheck.Evaluate(Bike, CheckOptions?, CancellationToken)"/> gives.</returns>
    /// <exception cref="ArgumentException">The bike has no circuit, its charging list is no curve, or the condition
    /// names what it does not have, leaves too many settings or none that can be solved.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="NetworkNotSolvedException">A stretch of the ride, or direct lighting in its heaviest setting,
    /// has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public BikeReport Evaluate(Bike bike, CheckOptions? options = null, CancellationToken cancellationToken = default)
    {
        BikeValidation.Require(bike);
        options ??= new CheckOptions();
        string key = WiringKey.Of(bike, options.When);
        if (!_wirings.TryGetValue(key, out Wiring? wiring))
        {
            wiring = new Wiring(bike, options.When);
            if (_met.TryAdd(key.GetHashCode(StringComparison.Ordinal), true))
            {
                if (_met.Count > MostMet)
                    _met.Clear();
            }
            else
            {
                if (_wirings.Count >= MostKept)
                    _wirings.Clear();
                _wirings.TryAdd(key, wiring);
            }
        }

        return BikeCheck.Evaluate(bike, wiring, options, cancellationToken);
    }
}
