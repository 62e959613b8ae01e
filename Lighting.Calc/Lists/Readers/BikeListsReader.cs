namespace Lighting.Calc;

/// <summary>Reads all lists of a bike, in their order, and checks them against each other.</summary>
internal static class BikeListsReader
{
    public static ListResult<BikeLists> Read(ListSource source, FaultLog log, bool wiresMayBeOpen = false)
    {
        source.LogFaults(log);
        if (log.HasFaults && source.Files.IsEmpty)
            return log.Failure<BikeLists>();
        var tables = ListTables.Open(source, log);
        var names = BikeNames.Of(tables);
        bool hasRuns = tables.Find(ListSchema.Runs) is { Rows.IsEmpty: false };
        Bike bike = BikeReader.Read(tables.Find(ListSchema.Bike));
        bike = bike with
        {
            Lamps = tables.Find(ListSchema.Lamps) is { } lamps
                ? LampsReader.Read(lamps, bike.SystemVoltage, hasRuns, log)
                : [],
            Runs = tables.Find(ListSchema.Runs) is { } runs ? RunsReader.Read(runs, wiresMayBeOpen) : [],
            Switches = tables.Find(ListSchema.Switches) is { } switches ? SwitchesReader.Read(switches) : [],
            Fuses = tables.Find(ListSchema.Fuses) is { } fuses
                ? FusesReader.Read(fuses, hasRuns || tables.IsUnreadable(ListSchema.Runs))
                : [],
            Charging = tables.Find(ListSchema.Charging) is { } charging ? ChargingReader.Read(charging) : [],
            Ride = tables.Find(ListSchema.Ride) is { } ride ? RideReader.Read(ride) : [],
        };
        if (tables.Find(ListSchema.Relays) is { } relays)
            bike = RelaysReader.Read(relays, bike, hasRuns || tables.IsUnreadable(ListSchema.Runs));
        bike = BikeReader.WithGeneratorPoint(bike, tables.Find(ListSchema.Bike), names, isWhole: !log.HasFaults);
        var lists = new BikeLists
        {
            Bike = bike,
            Swaps = tables.Find(ListSchema.Swaps) is { } swaps
                ? SwapsReader.Read(swaps, bike.SystemVoltage, names)
                : [],
            Readings = tables.Find(ListSchema.Readings) is { } readings
                ? ReadingsReader.Read(readings, names, hasRuns)
                : [],
            ItemNotes = BikeReader.Notes(tables.Find(ListSchema.Bike)),
            Prices = tables.Find(ListSchema.Prices) is { } prices ? PricesReader.Read(prices) : [],
        };
        LampVoltsChecks.CautionAssumed(tables, bike.SystemVoltage);
        ConditionChecks.Run(tables);
        PointChecks.Caution(names);
        return log.Result(lists);
    }

    /// <summary>The same bike with the swaps of a separate list.</summary>
    public static ListResult<BikeLists> ReadSwaps(BikeLists lists, ListSource source, FaultLog log) =>
        Only(source, ListSchema.Swaps, log) is { } table
            ? log.Result(
                lists with
                {
                    Swaps = SwapsReader.Read(table, lists.Bike.SystemVoltage, BikeNames.Of(lists.Bike)),
                }
            )
            : log.Failure<BikeLists>();

    /// <summary>The same bike with the charging list of a separate list.</summary>
    public static ListResult<BikeLists> ReadCharging(BikeLists lists, ListSource source, FaultLog log)
    {
        if (Only(source, ListSchema.Charging, log) is not { } table)
            return log.Failure<BikeLists>();
        BikeLists read = lists with { Bike = lists.Bike with { Charging = ChargingReader.Read(table) } };
        ConditionChecks.Run(table, lists.Bike, takesEngine: false);
        return log.Result(read);
    }

    /// <summary>The same bike with the prices of a separate list.</summary>
    public static ListResult<BikeLists> ReadPrices(BikeLists lists, ListSource source, FaultLog log) =>
        Only(source, ListSchema.Prices, log) is { } table
            ? log.Result(lists with { Prices = PricesReader.Read(table) })
            : log.Failure<BikeLists>();

    /// <summary>The same bike with the readings of a separate list.</summary>
    public static ListResult<BikeLists> ReadReadings(BikeLists lists, ListSource source, FaultLog log)
    {
        if (Only(source, ListSchema.Readings, log) is not { } table)
            return log.Failure<BikeLists>();
        BikeLists read = lists with
        {
            Readings = ReadingsReader.Read(table, BikeNames.Of(lists.Bike), lists.Bike.HasNetwork),
        };
        ConditionChecks.Run(table, lists.Bike);
        return log.Result(read);
    }

    /// <summary>The one list of a source that is wanted; null, with the fault logged, where it is missing or cannot be
    /// read.</summary>
    public static ListTable? Only(ListSource source, ListSchema schema, FaultLog log)
    {
        if (source.Files.FirstOrDefault(f => Name.Equal(f.Name, schema.File)) is { } file)
            return file.Table(schema, log);
        if (!log.HasFaults)
            log.Fault(new ListFault { File = schema.File, Problem = "the list is missing" });
        return null;
    }
}
