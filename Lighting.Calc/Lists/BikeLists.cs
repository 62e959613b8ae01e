using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Lists;

/// <summary>Everything a bike's lists say: the bike, the lamps to be swapped, and the readings taken. Immutable.</summary>
public sealed record BikeLists
{
    /// <summary>The bike.</summary>
    public required Bike Bike { get; init; }

    /// <summary>The lamp replacements of <c>swaps.csv</c>; empty without that list.</summary>
    public ImmutableArray<LampReplacement> Swaps { get; init; } = [];

    /// <summary>The readings of <c>readings.csv</c> that were taken; empty without that list.</summary>
    public ImmutableArray<Reading> Readings { get; init; } = [];

    /// <summary>Reads a bike from a folder of lists, or from a single file, which is then its <c>lamps.csv</c>.</summary>
    /// <param name="path">The folder or the file. That it is missing or cannot be read is a fault in the result.</param>
    /// <returns>The lists, or every fault found in all of them.</returns>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public static ListResult<BikeLists> Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        ListSource source = ListPath.Open(path, log);
        return log.HasFaults ? log.Failure<BikeLists>() : new BikeListsReader(source, log).Read();
    }

    /// <summary>Reads a bike from lists in memory.</summary>
    /// <param name="source">The lists.</param>
    /// <returns>The lists, or every fault found in all of them.</returns>
    public static ListResult<BikeLists> Read(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return new BikeListsReader(source, new FaultLog()).Read();
    }
}
