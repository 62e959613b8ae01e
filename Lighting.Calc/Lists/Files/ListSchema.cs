using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A list's file name and columns.</summary>
internal sealed record ListSchema(string File, ImmutableArray<ListColumn> Columns)
{
    /// <summary>The column of remarks, which no calculation uses.</summary>
    public const string Notes = "notes";

    public static readonly ListSchema Bike = Of("bike.csv", "item!", "value!");

    public static readonly ListSchema Lamps = Of(
        "lamps.csv",
        "circuit!",
        "lamp!",
        "code",
        "type",
        "quantity",
        "volts",
        "watts",
        "amps",
        "minimum volts",
        "lit when",
        "duty",
        "feed",
        "return",
        "allowed drop",
        "momentary"
    );

    public static readonly ListSchema Runs = Of(
        "runs.csv",
        "run!",
        "from!",
        "to!",
        "wire",
        "length!",
        "joints",
        "joint resistance",
        "bundle",
        "bundle loading",
        "colour",
        "cable",
        "from end",
        "to end"
    );

    public static readonly ListSchema Switches = Of(
        "switches.csv",
        "switch!",
        "from!",
        "to!",
        "closed in!",
        "resistance",
        "has off",
        "momentary"
    );

    public static readonly ListSchema Fuses = Of(
        "fuses.csv",
        "fuse!",
        "from!",
        "to!",
        "rating!",
        "style",
        "resistance",
        "marked"
    );

    public static readonly ListSchema Relays = Of(
        "relays.csv",
        "relay!",
        "coil from",
        "coil to",
        "coil resistance",
        "coil watts",
        "pull in",
        "drop out",
        "from",
        "to",
        "contact",
        "contact resistance"
    );

    public static readonly ListSchema Charging = Of(
        "charging.csv",
        "rpm!",
        "current!",
        "when",
        "voltage",
        "open voltage"
    );

    public static readonly ListSchema Ride = Of("ride.csv", "stretch!", "rpm!", "minutes!", "when");

    public static readonly ListSchema Swaps = Of(
        "swaps.csv",
        "lamp!",
        "new code",
        "type",
        "volts",
        "watts",
        "amps",
        "minimum volts"
    );

    public static readonly ListSchema Readings = Of(
        "readings.csv",
        "when!",
        "point!",
        "instrument!",
        "reading!",
        "to",
        "jumper",
        "unplugged"
    );

    public static readonly ListSchema Prices = Of("prices.csv", "item!", "price!");

    /// <summary>A mechanic's own priors of faults, which is no list of a bike.</summary>
    public static readonly ListSchema Priors = Only("fault-priors.csv", "fault!", "weight!", "source");

    /// <summary>Every list of a bike, in the order in which they are read and their faults reported.</summary>
    public static readonly ImmutableArray<ListSchema> All =
    [
        Bike,
        Lamps,
        Runs,
        Switches,
        Fuses,
        Relays,
        Charging,
        Ride,
        Swaps,
        Readings,
        Prices,
    ];

    /// <summary>The column names, for a message.</summary>
    public string KnownColumns => string.Join(", ", Columns.Select(c => c.Name));

    /// <summary>The place of a column in <see cref="Columns"/>; −1 if there is none of that name.</summary>
    public int IndexOf(string column)
    {
        for (int i = 0; i < Columns.Length; i++)
            if (string.Equals(Columns[i].Name, column, StringComparison.OrdinalIgnoreCase))
                return i;
        return -1;
    }

    // Every list of a bike may have remarks in a last column.
    private static ListSchema Of(string file, params string[] columns) => Only(file, [.. columns, Notes]);

    private static ListSchema Only(string file, params string[] columns) =>
        new(file, [.. columns.Select(c => new ListColumn(c.TrimEnd('!'), c.EndsWith('!')))]);
}
