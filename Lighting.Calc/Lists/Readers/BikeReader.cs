using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>bike.csv</c>: an item and its value on each row.</summary>
internal static class BikeReader
{
    /// <summary>The item that names the point at which the generator joins the harness.</summary>
    public const string GeneratorPoint = "generator joins at";

    /// <summary>The item that says where the regulator takes its voltage.</summary>
    public const string RegulatorPoint = "regulator joins at";

    private static readonly string[] s_items =
    [
        "name",
        "system voltage",
        "battery voltage",
        "charging voltage",
        "battery capacity",
        "battery resistance",
        "wire temperature",
        "earth",
        "allowed drop",
        "lighting",
        "regulator",
        "regulator resistance",
        "regulator rating",
        RegulatorPoint,
        "generator resistance",
        GeneratorPoint,
        "ignition",
        "flasher",
        "flasher load",
        "ambient temperature",
        "cable",
    ];

    /// <summary>The flasher words of the list.</summary>
    public static readonly (string Word, FlasherKind Value)[] Flashers =
    [
        ("thermal", FlasherKind.Thermal),
        ("electronic", FlasherKind.Electronic),
        ("none", FlasherKind.None),
    ];

    /// <summary>The regulator words of the list; the voltage of a Zener diode follows its word.</summary>
    public static readonly (string Word, RegulatorKind Value)[] Regulators =
    [
        ("none", RegulatorKind.None),
        ("shunt", RegulatorKind.Shunt),
        ("series", RegulatorKind.Series),
        (Zener, RegulatorKind.Shunt),
    ];

    /// <summary>The words of the list for where the regulator takes its voltage.</summary>
    public static readonly (string Word, RegulatorPlace Value)[] RegulatorPlaces =
    [
        ("generator", RegulatorPlace.Generator),
        ("battery", RegulatorPlace.Battery),
    ];

    /// <summary>The ignition words of the list.</summary>
    public static readonly (string Word, IgnitionKind Value)[] Ignitions =
    [
        ("battery", IgnitionKind.Battery),
        ("magneto", IgnitionKind.Magneto),
    ];

    /// <summary>The word for a Zener diode.</summary>
    public const string Zener = "zener";

    /// <summary>The bike without its lists; what is not given, or not readable and logged, is assumed.</summary>
    public static Bike Read(ListTable? table)
    {
        Dictionary<string, ListRow> items = Items(table);
        ElectricPotential system = Value(items, "system voltage", CellRanges.SystemVolts) ?? BikeDefaults.SystemVoltage;
        Bike assumed = Bike.ForSystem(system);
        Bike bike = assumed with
        {
            Name = Row(items, "name")?.Text("value") ?? "",
            BatteryVoltage = Value(items, "battery voltage", CellRanges.SourceVolts) ?? assumed.BatteryVoltage,
            ChargingVoltage = Value(items, "charging voltage", CellRanges.SourceVolts) ?? assumed.ChargingVoltage,
            BatteryCapacity = Value(items, "battery capacity", CellRanges.Capacity),
            BatteryResistance = Value(items, "battery resistance", CellRanges.Ohms) ?? assumed.BatteryResistance,
            Earth = Row(items, "earth")
                ?.Word("value", "an earth", ("negative", Earth.Negative), ("positive", Earth.Positive))
                ?? assumed.Earth,
            Lighting = Row(items, "lighting")
                ?.Word(
                    "value",
                    "a lighting supply",
                    ("battery", LightingSupply.Battery),
                    ("direct", LightingSupply.Direct)
                )
                ?? assumed.Lighting,
            Ignition = Row(items, "ignition")?.Word("value", "an ignition", Ignitions) ?? assumed.Ignition,
            Flasher = Row(items, "flasher")?.Word("value", "a flasher", Flashers) ?? assumed.Flasher,
            AmbientTemperature = Value(items, "ambient temperature", CellRanges.AirDegrees),
            Cable = Row(items, "cable")?.Word("value", "a kind of cable", RunsReader.Cables),
            FlasherLoad = Value(items, "flasher load", CellRanges.LampWatts),
            RegulatorResistance = Value(items, "regulator resistance", CellRanges.Ohms) ?? assumed.RegulatorResistance,
            RegulatorPlace =
                Row(items, RegulatorPoint)?.Word("value", "a place", RegulatorPlaces) ?? assumed.RegulatorPlace,
            RegulatorRating = Value(items, "regulator rating", CellRanges.LampWatts),
            GeneratorResistance = Value(items, "generator resistance", CellRanges.Ohms),
        };
        (RegulatorKind regulator, ElectricPotential? zener) = Regulator(Row(items, "regulator"));
        bike = bike with { Regulator = regulator, ZenerVoltage = zener };
        if (Value(items, "wire temperature", CellRanges.WireDegrees) is { } wires)
            bike = bike with { WireTemperature = wires };
        if (Value(items, "allowed drop", CellRanges.Drop) is { } drop)
            bike = bike with { AllowedDrop = drop };
        CautionOddVolts(items, bike);
        if (bike.FlasherLoad is not null && bike.Flasher != FlasherKind.Thermal)
            Row(items, "flasher load")
                ?.Caution(
                    "value",
                    Row(items, "flasher load")?.Text("value"),
                    "is not used",
                    "only a thermal flasher has a rated load"
                );
        if (!items.ContainsKey(GeneratorPoint))
            Row(items, RegulatorPoint)
                ?.Caution(
                    "value",
                    Row(items, RegulatorPoint)?.Text("value"),
                    "is not used",
                    $"the generator joins at the battery; '{GeneratorPoint}' names another point"
                );
        foreach (string item in new[] { "regulator resistance", "regulator rating" })
            if (bike.Regulator != RegulatorKind.Shunt)
                Row(items, item)
                    ?.Caution(
                        "value",
                        Row(items, item)?.Text("value"),
                        "is not used",
                        "only a shunt regulator or a Zener diode takes surplus current"
                    );
        return bike;
    }

    /// <summary>The bike with the point at which its generator joins the harness, which its other lists must
    /// name.</summary>
    /// <param name="bike">The bike with its other lists.</param>
    /// <param name="table">This list.</param>
    /// <param name="names">The points that are named.</param>
    /// <param name="isWhole">Whether all of the bike could be read, so that its wiring is known.</param>
    public static Bike WithGeneratorPoint(Bike bike, ListTable? table, BikeNames names, bool isWhole)
    {
        if (table?.Rows.FirstOrDefault(r => r.Text("item") is { } i && Name.Equal(i, GeneratorPoint)) is not { } row)
            return bike;
        if (PointCells.Optional(row, "value") is not { } point || Name.Equal(point, bike.LivePoint))
            return bike;
        if (!bike.HasNetwork && !isWhole)
            return bike;
        if (!bike.HasNetwork || bike.Lighting == LightingSupply.Direct)
        {
            row.Caution(
                "value",
                point,
                "is not used",
                bike.HasNetwork ? "a lighting coil charges no battery" : "without runs.csv no point is known"
            );
            return bike;
        }

        names.Check(row, "value", point, "a point of the bike", [NamedThing.Point]);
        if (isWhole && names.IsPoint(point) && BikeValidation.JointProblem(bike, point) is { } problem)
            row.Fault("value", point, problem, BikeValidation.JointExpected);
        return bike with { GeneratorPoint = point };
    }

    /// <summary>The remarks of the list, by item.</summary>
    public static ImmutableDictionary<string, string> Notes(ListTable? table) =>
        (table?.Rows ?? [])
            .Where(r => r.Text("item") is not null && r.Text(ListSchema.Notes) is not null)
            .DistinctBy(r => r.Text("item"), Name.Comparer)
            .ToImmutableDictionary(r => r.Text("item")!, r => r.Text(ListSchema.Notes)!, Name.Comparer);

    /// <summary>Whether the list states an item.</summary>
    public static bool States(ListTable? table, string item) =>
        (table?.Rows ?? []).Any(r => r.Text("item") is { } known && Name.Equal(known, item));

    // The voltage of a Zener diode stands behind its word; without it, it is not known.
    private static (RegulatorKind Kind, ElectricPotential? Zener) Regulator(ListRow? row)
    {
        if (row?.Text("value") is not { } text)
            return default;
        if (!text.StartsWith(Zener + " ", StringComparison.OrdinalIgnoreCase))
            return (row.Word("value", "a regulator", Regulators) ?? RegulatorKind.NotStated, null);
        if (
            CellRanges.SourceVolts.TryParse(
                text[Zener.Length..].Trim(),
                out ElectricPotential voltage,
                out TextProblem? problem
            )
        )
            return (RegulatorKind.Shunt, voltage);
        row.Fault("value", problem);
        return default;
    }

    private static Dictionary<string, ListRow> Items(ListTable? table)
    {
        var items = new Dictionary<string, ListRow>(Name.Comparer);
        foreach (ListRow row in table?.Rows ?? [])
        {
            if (row.Required("item") is not { } item)
                continue;
            if (!s_items.Contains(item, Name.Comparer))
                row.Fault(
                    "item",
                    item,
                    "is not an item of this list",
                    $"the items are {string.Join(", ", s_items)}",
                    SpellingSuggestions.Of(item, s_items)
                );
            else if (!items.TryAdd(item, row))
                row.Fault("item", item, $"is given on {items[item].Where} already", "keep one of the two");
        }

        return items;
    }

    private static ListRow? Row(Dictionary<string, ListRow> items, string item) => items.GetValueOrDefault(item);

    private static T? Value<T>(Dictionary<string, ListRow> items, string item, QuantityText<T> reader)
        where T : struct, IQuantity => Row(items, item)?.Quantity("value", reader);

    private static void CautionOddVolts(Dictionary<string, ListRow> items, Bike bike)
    {
        double system = bike.SystemVoltage.Volts;
        if (system is not (6 or 12))
            Row(items, "system voltage")
                ?.Caution(
                    "value",
                    Row(items, "system voltage")?.Text("value"),
                    "is an unusual system voltage",
                    "published lamps are for 6 V and 12 V"
                );
        Check("battery voltage", bike.BatteryVoltage);
        Check("charging voltage", bike.ChargingVoltage);

        void Check(string item, ElectricPotential volts)
        {
            if (volts.Volts < 0.8 * system || volts.Volts > 1.4 * system)
                Row(items, item)
                    ?.Caution(
                        "value",
                        Row(items, item)?.Text("value"),
                        $"is far from the system voltage, {QuantityText.Voltage.Write(bike.SystemVoltage)} V",
                        null
                    );
        }
    }
}
