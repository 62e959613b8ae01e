using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A mechanic's own priors: the rows of <c>tables/fault-priors.csv</c> that differ, the others as
/// published.</summary>
public sealed class FaultPriorList
{
    private FaultPriorList(ImmutableArray<FaultPrior> priors) => Priors = priors;

    /// <summary>Every prior, for <see cref="FaultFindingOptions.Priors"/>.</summary>
    public ImmutableArray<FaultPrior> Priors { get; }

    /// <summary>Reads a list of the columns <c>fault</c>, <c>weight</c> and, if wanted, <c>source</c>.</summary>
    /// <param name="path">The file, of any name. A missing or unreadable file is a fault in the result.</param>
    /// <returns>The priors, or every fault found in the list.</returns>
    /// <exception cref="ArgumentException">The path is null or empty.</exception>
    public static ListResult<FaultPriorList> Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var log = new FaultLog();
        return Read(ListPath.OpenFile(path, ListSchema.Priors, log), log);
    }

    /// <summary>The same from memory.</summary>
    /// <param name="source">Holds a <c>fault-priors.csv</c>.</param>
    /// <returns>The priors, or every fault found in the list.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public static ListResult<FaultPriorList> Read(ListSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return Read(source, new FaultLog());
    }

    private static ListResult<FaultPriorList> Read(ListSource source, FaultLog log)
    {
        if (BikeListsReader.Only(source, ListSchema.Priors, log) is not { } table)
            return log.Failure<FaultPriorList>();
        var faults = new UniqueNames("fault", "fault");
        var given = new Dictionary<string, FaultPrior>(Name.Comparer);
        string[] known = [.. FaultFindingOptions.PublishedPriors.Select(p => p.Fault)];
        foreach (ListRow row in table.Rows)
        {
            string fault = faults.Take(row);
            if (fault.Length > 0 && !known.Contains(fault, Name.Comparer))
                row.Fault(
                    "fault",
                    fault,
                    "is not a fault of the table fault-priors",
                    $"the faults are {string.Join(", ", known)}",
                    SpellingSuggestions.Of(fault, known)
                );
            double? weight = Weight(row);
            if (!row.IsFaulty && weight is { } w)
                given[fault] = new FaultPrior(fault, w, row.Text("source") ?? "the list given");
        }

        return log.Result(
            new FaultPriorList([
                .. FaultFindingOptions.PublishedPriors.Select(p =>
                    given.TryGetValue(p.Fault, out FaultPrior? own) ? own with { Fault = p.Fault } : p
                ),
            ])
        );
    }

    // A weight of zero would exclude a fault whatever the readings.
    private static double? Weight(ListRow row)
    {
        if (row.Required("weight") is not { } text)
            return null;
        if (
            StrictNumber.TrySplit(text, out double weight, out ReadOnlySpan<char> word)
            && word.Length == 0
            && weight is >= 1e-6 and <= 1e6
        )
            return weight;
        row.Fault(
            "weight",
            text,
            "is not a weight",
            StrictNumber.WithDecimalPoint(text) is { } point
                ? $"write a decimal point: {point}"
                : "expected a number from 0.000001 to 1000000, such as 10"
        );
        return null;
    }
}
