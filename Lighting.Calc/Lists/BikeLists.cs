using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Lighting.Calc;

/// <summary>Contents of a bike's lists: the bike, lamp replacements and readings. Immutable.</summary>
[JsonConverter(typeof(BikeListsJsonConverter))]
public sealed record BikeLists
{
    /// <summary>The bike.</summary>
    public required Bike Bike { get; init; }

    /// <summary>The lamp replacements of <c>swaps.csv</c>; empty without that list.</summary>
    public ImmutableArray<LampReplacement> Swaps { get; init; } = [];

    /// <summary>The readings of <c>readings.csv</c> that were taken; empty without that list.</summary>
    public ImmutableArray<Reading> Readings { get; init; } = [];

    /// <summary>The remarks of <c>bike.csv</c>, by item.</summary>
    internal ImmutableDictionary<string, string> ItemNotes { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>The prices of <c>prices.csv</c>; empty without that list.</summary>
    public ImmutableArray<ItemPrice> Prices { get; init; } = [];

    /// <summary>Reads a bike from a folder of lists, or from a single file, which is then its
    /// <c>lamps.csv</c>.</summary>
    /// <param name="path">The folder or the file. A missing or unreadable file is a fault in the result.</param>
    /// <returns>The lists, or every fault found in all of them.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public static ListResult<BikeLists> Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        ListSource source = ListPath.Open(path, log);
        return log.HasFaults ? log.Failure<BikeLists>() : BikeListsReader.Read(source, log);
    }

    /// <summary>Reads a bike from lists in memory.</summary>
    /// <param name="source">The lists.</param>
    /// <returns>The lists, or every fault found in all of them.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public static ListResult<BikeLists> Read(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return BikeListsReader.Read(source, new FaultLog());
    }

    /// <summary>Reads a bike whose wires may still have to be chosen: where the cell of a wire is blank the run is
    /// <see cref="Run.WireIsOpen"/>, for <see cref="HarnessSizing"/>.</summary>
    /// <param name="path">The folder or the file. A missing or unreadable file is a fault in the result.</param>
    /// <returns>The lists, or every fault found in all of them.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public static ListResult<BikeLists> ReadWithOpenWires(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        ListSource source = ListPath.Open(path, log);
        return log.HasFaults ? log.Failure<BikeLists>() : BikeListsReader.Read(source, log, wiresMayBeOpen: true);
    }

    /// <summary>The same of lists in memory.</summary>
    /// <param name="source">The lists.</param>
    /// <returns>The lists, or every fault found in all of them.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public static ListResult<BikeLists> ReadWithOpenWires(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return BikeListsReader.Read(source, new FaultLog(), wiresMayBeOpen: true);
    }

    /// <summary>The same bike with the swaps of a separate file.</summary>
    /// <param name="path">The file, a <c>swaps.csv</c> of any name. A missing or unreadable file is a fault in the
    /// result.</param>
    /// <returns>The lists, or every fault found in the file.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public ListResult<BikeLists> WithSwaps(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        return BikeListsReader.ReadSwaps(this, ListPath.OpenFile(path, ListSchema.Swaps, log), log);
    }

    /// <summary>The same bike with the swaps of a list in memory.</summary>
    /// <param name="source">Holds a <c>swaps.csv</c>; other lists in it are not read.</param>
    /// <returns>The lists, or every fault found in the list.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public ListResult<BikeLists> WithSwaps(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return BikeListsReader.ReadSwaps(this, source, new FaultLog());
    }

    /// <summary>The same bike with the charging list of a separate file: another generator.</summary>
    /// <param name="path">The file, a <c>charging.csv</c> of any name. A missing or unreadable file is a fault in the
    /// result.</param>
    /// <returns>The lists, or every fault found in the file.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public ListResult<BikeLists> WithCharging(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        return BikeListsReader.ReadCharging(this, ListPath.OpenFile(path, ListSchema.Charging, log), log);
    }

    /// <summary>The same bike with the charging list of a list in memory.</summary>
    /// <param name="source">Holds a <c>charging.csv</c>; other lists in it are not read.</param>
    /// <returns>The lists, or every fault found in the list.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public ListResult<BikeLists> WithCharging(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return BikeListsReader.ReadCharging(this, source, new FaultLog());
    }

    /// <summary>The same bike with the prices of a separate file.</summary>
    /// <param name="path">The file, a <c>prices.csv</c> of any name. A missing or unreadable file is a fault in the
    /// result.</param>
    /// <returns>The lists, or every fault found in the file.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public ListResult<BikeLists> WithPrices(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        return BikeListsReader.ReadPrices(this, ListPath.OpenFile(path, ListSchema.Prices, log), log);
    }

    /// <summary>The same bike with the readings of a separate file.</summary>
    /// <param name="path">The file, a <c>readings.csv</c> of any name. A missing or unreadable file is a fault in the
    /// result.</param>
    /// <returns>The lists, or every fault found in the file.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public ListResult<BikeLists> WithReadings(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        return BikeListsReader.ReadReadings(this, ListPath.OpenFile(path, ListSchema.Readings, log), log);
    }

    /// <summary>The same bike with the readings of a list in memory.</summary>
    /// <param name="source">Holds a <c>readings.csv</c>; other lists in it are not read.</param>
    /// <returns>The lists, or every fault found in the list.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public ListResult<BikeLists> WithReadings(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return BikeListsReader.ReadReadings(this, source, new FaultLog());
    }

    /// <inheritdoc/>
    public bool Equals(BikeLists? other) =>
        other is not null
        && Bike.Equals(other.Bike)
        && Swaps.HoldsSame(other.Swaps)
        && Readings.HoldsSame(other.Readings)
        && Prices.HoldsSame(other.Prices)
        && ItemNotes.Count == other.ItemNotes.Count
        && ItemNotes.All(n => other.ItemNotes.GetValueOrDefault(n.Key) == n.Value);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Bike, Swaps.HashOfParts(), Readings.HashOfParts());
}
