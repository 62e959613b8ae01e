using System.Globalization;
using System.Text.Json;

namespace Lighting.Calc;

/// <summary>Writes a bike's lists, as CSV or JSON text that reads back as the same bike.</summary>
/// <remarks>
/// Numbers are in the bare unit and exact. A name that a spreadsheet would run as a formula is preceded by an
/// apostrophe, which reading removes. A lamp with a code of the lamp table or of the LED classes is written by its
/// code; the light of a lamp without one (<see cref="LampSpecification.ReferenceFlux"/>) has no column. White space in
/// names is written as it is and read folded.
/// </remarks>
public static class BikeListsWriter
{
    /// <summary>Every list the bike has, by its name; <c>bike.csv</c> and <c>lamps.csv</c> always.</summary>
    /// <param name="lists">What to write.</param>
    /// <returns>The text of each list by its name, such as <c>runs.csv</c>; lists without rows are left out.</returns>
    /// <exception cref="ArgumentNullException">There is nothing to write: null.</exception>
    public static IReadOnlyDictionary<string, string> Write(BikeLists lists)
    {
        ArgumentNullException.ThrowIfNull(lists);
        return Rows(lists)
            .Where(l => l.Rows.Length > 0 || l.List == ListSchema.Lamps)
            .ToDictionary(l => l.List.File, l => ListTextWriter.Write(l.List, l.Rows));
    }

    /// <summary>Every list the bike has as one JSON object, in the form of <see cref="ListSource.FromJson(string)"/>:
    /// the texts of the CSV lists under the same names.</summary>
    /// <param name="lists">What to write.</param>
    /// <returns>Indented JSON; blank cells, lists without rows and the remarks of bike.csv are left out.</returns>
    /// <exception cref="ArgumentNullException">There is nothing to write: null.</exception>
    public static string WriteJson(BikeLists lists)
    {
        ArgumentNullException.ThrowIfNull(lists);
        return JsonText.Of(json => WriteJson(lists, json));
    }

    /// <summary>The same object as <see cref="WriteJson(BikeLists)"/>, to a writer of your own.</summary>
    /// <param name="lists">What to write.</param>
    /// <param name="writer">Receives one object.</param>
    /// <exception cref="ArgumentNullException">There is nothing to write, or nowhere: null.</exception>
    public static void WriteJson(BikeLists lists, Utf8JsonWriter writer)
    {
        ArgumentNullException.ThrowIfNull(lists);
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        foreach ((ListSchema list, string[][] rows) in Rows(lists))
        {
            if (list == ListSchema.Bike)
            {
                writer.WriteStartObject(JsonLists.KeyOf(list));
                foreach (string[] item in rows)
                    writer.WriteString(item[0], item[1]);
                writer.WriteEndObject();
            }
            else if (rows.Length > 0)
            {
                writer.WriteStartArray(JsonLists.KeyOf(list));
                foreach (string[] row in rows)
                {
                    writer.WriteStartObject();
                    foreach ((int column, string cell) in row.Index())
                        if (cell.Length > 0)
                            writer.WriteString(list.Columns[column].Name, cell);
                    writer.WriteEndObject();
                }

                writer.WriteEndArray();
            }
        }

        writer.WriteEndObject();
    }

    // The rows of each list, in the order of the lists.
    private static (ListSchema List, string[][] Rows)[] Rows(BikeLists lists)
    {
        Bike bike = lists.Bike;
        return
        [
            (ListSchema.Bike, [.. Items(bike).Select(i => Noted(i, lists.ItemNotes.GetValueOrDefault(i[0])))]),
            (ListSchema.Lamps, [.. bike.Lamps.Where(l => l.Coil is null).Select(l => Noted(Lamp(l, bike), l.Notes))]),
            (ListSchema.Runs, [.. bike.Runs.Select(r => Noted(Run(r), r.Notes))]),
            (ListSchema.Switches, [.. bike.Switches.Where(c => !c.IsRelay).Select(c => Noted(Contact(c), c.Notes))]),
            (ListSchema.Fuses, [.. bike.Fuses.Select(f => Noted(Fuse(f), f.Notes))]),
            (ListSchema.Relays, [.. bike.Relays.SelectMany(Relay)]),
            (ListSchema.Charging, [.. bike.Charging.Select(p => Noted(Point(p), p.Notes))]),
            (ListSchema.Ride, [.. bike.Ride.Select(s => Noted(Stretch(s), s.Notes))]),
            (ListSchema.Swaps, [.. lists.Swaps.Select(s => Noted(Swap(s, bike), s.Notes))]),
            (ListSchema.Readings, [.. lists.Readings.Select(r => Noted(Reading(r), r.Notes))]),
            (ListSchema.Prices, [.. lists.Prices.Select(p => Noted(Price(p), null))]),
        ];
    }

    private static string[] Price(ItemPrice price) =>
        [Text(price.Item), price.Price.ToString(CultureInfo.InvariantCulture)];

    private static string[] Noted(string[] row, string? notes) => [.. row, Text(notes)];

    private static IEnumerable<string[]> Items(Bike bike)
    {
        if (bike.Name.Length > 0)
            yield return ["name", Text(bike.Name)];
        yield return ["system voltage", QuantityText.Voltage.Write(bike.SystemVoltage)];
        yield return ["battery voltage", QuantityText.Voltage.Write(bike.BatteryVoltage)];
        yield return ["charging voltage", QuantityText.Voltage.Write(bike.ChargingVoltage)];
        if (bike.BatteryCapacity is { } capacity)
            yield return ["battery capacity", QuantityText.Charge.Write(capacity)];
        yield return ["battery resistance", QuantityText.Resistance.Write(bike.BatteryResistance)];
        if (bike.StatedWireTemperature is { } wires)
            yield return ["wire temperature", QuantityText.Temperature.Write(wires)];
        yield return ["earth", bike.Earth == Earth.Positive ? "positive" : "negative"];
        if (bike.StatedDrop is { } drop)
            yield return ["allowed drop", QuantityText.Percent.Write(drop)];
        if (bike.Lighting == LightingSupply.Direct)
            yield return ["lighting", "direct"];
        if (bike.ZenerVoltage is { } zener)
            yield return ["regulator", $"{BikeReader.Zener} {QuantityText.Voltage.Write(zener)}"];
        else if (bike.Regulator != RegulatorKind.NotStated)
            yield return ["regulator", BikeReader.Regulators.First(r => r.Value == bike.Regulator).Word];
        if (bike.RegulatorResistance.Ohms > 0)
            yield return ["regulator resistance", QuantityText.Resistance.Write(bike.RegulatorResistance)];
        if (bike.RegulatorPlace != RegulatorPlace.Generator)
            yield return
            [
                BikeReader.RegulatorPoint,
                BikeReader.RegulatorPlaces.First(p => p.Value == bike.RegulatorPlace).Word,
            ];
        if (bike.RegulatorRating is { } heat)
            yield return ["regulator rating", QuantityText.Power.Write(heat)];
        if (bike.GeneratorResistance is { } winding)
            yield return ["generator resistance", QuantityText.Resistance.Write(winding)];
        if (bike.GeneratorPoint is { } joint)
            yield return [BikeReader.GeneratorPoint, Text(joint)];
        if (bike.Ignition != IgnitionKind.NotStated)
            yield return ["ignition", BikeReader.Ignitions.First(i => i.Value == bike.Ignition).Word];
        if (bike.Flasher != FlasherKind.NotStated)
            yield return ["flasher", BikeReader.Flashers.First(f => f.Value == bike.Flasher).Word];
        if (bike.AmbientTemperature is { } ambient)
            yield return ["ambient temperature", QuantityText.Temperature.Write(ambient)];
        if (bike.Cable is { } cable)
            yield return ["cable", Word(cable)];
        if (bike.FlasherLoad is { } load)
            yield return ["flasher load", QuantityText.Power.Write(load)];
    }

    private static string[] Lamp(FittedLamp lamp, Bike bike)
    {
        (string code, string type, string volts, string amps, string minimum) = Figures(lamp.Specification, bike);
        return
        [
            Text(lamp.Circuit),
            Text(lamp.Lamp),
            code,
            type,
            Whole(lamp.Quantity),
            volts,
            "",
            amps,
            minimum,
            Text(lamp.LitWhen.ToString()),
            lamp.StatedDuty is { } duty ? QuantityText.Fraction.Write(duty) : "",
            Text(lamp.Feed),
            Text(lamp.Return),
            lamp.AllowedDrop is { } drop ? QuantityText.Percent.Write(drop) : "",
            YesOrNo(lamp.Momentary),
        ];
    }

    private static string[] Run(Run run) =>
        [
            Text(run.Name),
            Text(run.From),
            Text(run.To),
            run.WireIsOpen ? "" : run.Wire.Name,
            QuantityText.Length.Write(run.Length),
            Whole(run.Joints),
            run.AssumesJoints ? "" : QuantityText.Resistance.Write(run.JointResistance),
            Whole(run.Bundle),
            run.BundleLoading is { } loading ? QuantityText.Percent.Write(loading) : "",
            run.Colour?.Code ?? "",
            Word(run.Cable),
            Text(run.FromEnd),
            Text(run.ToEnd),
        ];

    private static string[] Contact(SwitchContact contact) =>
        [
            Text(contact.Switch),
            Text(contact.From),
            Text(contact.To),
            Text(string.Join('|', contact.ClosedIn)),
            QuantityText.Resistance.Write(contact.Resistance),
            contact.HasOff ? "" : "no",
            YesOrNo(contact.Momentary),
        ];

    private static string[] Fuse(Fuse fuse) =>
        [
            Text(fuse.Name),
            Text(fuse.From),
            Text(fuse.To),
            QuantityText.Current.Write(fuse.Rating),
            TimeCurrentLimits.NameOf(fuse.Style),
            fuse.Resistance is { } ohms ? QuantityText.Resistance.Write(ohms) : "",
            fuse.IsMarkedWithBlowingCurrent ? "blow" : "",
        ];

    // The coil in the first row alone, with the remark on the relay.
    private static IEnumerable<string[]> Relay(Relay relay) =>
        relay.Contacts.Select(
            (contact, i) =>
                Noted(
                    [
                        Text(relay.Name),
                        i == 0 ? Text(relay.CoilFrom) : "",
                        i == 0 ? Text(relay.CoilTo) : "",
                        i == 0 ? QuantityText.Resistance.Write(relay.CoilResistance) : "",
                        "",
                        i == 0 ? QuantityText.Voltage.Write(relay.PullInVoltage) : "",
                        i == 0 ? QuantityText.Voltage.Write(relay.DropOutVoltage) : "",
                        Text(contact.From),
                        Text(contact.To),
                        contact.IsBreak ? "break" : "make",
                        QuantityText.Resistance.Write(contact.Resistance),
                    ],
                    i == 0 ? relay.Notes : contact.Notes
                )
        );

    private static string[] Point(ChargingPoint point) =>
        [
            QuantityText.Speed.Write(point.Speed),
            QuantityText.Current.Write(point.Current),
            Text(point.When.ToString()),
            point.Voltage is { } voltage ? QuantityText.Voltage.Write(voltage) : "",
            point.OpenVoltage is { } open ? QuantityText.Voltage.Write(open) : "",
        ];

    private static string[] Stretch(RideStretch stretch) =>
        [
            Text(stretch.Stretch),
            QuantityText.Speed.Write(stretch.Speed),
            QuantityText.Duration.Write(stretch.Duration),
            Text(stretch.When.ToString()),
        ];

    private static string[] Swap(LampReplacement swap, Bike bike)
    {
        (string code, string type, string volts, string amps, string minimum) = Figures(swap.Replacement, bike);
        return [Text(swap.Lamp), code, type, volts, "", amps, minimum];
    }

    /// <summary>Readings alone, as a <c>readings.csv</c>.</summary>
    internal static string Write(IEnumerable<Reading> readings) =>
        ListTextWriter.Write(ListSchema.Readings, readings.Select(r => Noted(Reading(r), r.Notes)));

    private static string[] Reading(Reading reading) =>
        [
            Text(reading.When.ToString()),
            Text(reading.Point),
            ReadingsReader.Instruments.First(i => i.Value == reading.Instrument).Word,
            reading.IsSkipped ? ReadingsReader.Skipped
            : reading.IsOpen ? ReadingsReader.Open
            : reading.Voltage is { } volts ? QuantityText.Voltage.Write(volts)
            : reading.Current is { } amps ? QuantityText.Current.Write(amps)
            : reading.Resistance is { } ohms ? QuantityText.Resistance.Write(ohms)
            : reading.Seen is { } seen ? ReadingsReader.WordOf(reading.Instrument, seen)
            : "",
            Text(reading.To ?? ""),
            Text(reading.Jumper?.ToString() ?? ""),
            Text(reading.Unplugged ?? ""),
        ];

    private static (string Code, string Type, string Volts, string Amps, string Minimum) Figures(
        LampSpecification lamp,
        Bike bike
    )
    {
        if (
            lamp.Code is { } code
            && LampTable.TryFind(code, bike.SystemVoltage, out PublishedLamp? published)
            && published?.Specification == lamp
        )
            return (Text(code), "", "", "", "");
        if (lamp.Code is { } led && LedClassTable.TryFind(led, out LampSpecification? generic) && generic == lamp)
            return (Text(led), "", "", "", "");
        string type = LampCells.Types.First(t => t.Value == lamp.Type).Word;
        string minimum = lamp.MinimumVoltage is { } least ? QuantityText.Voltage.Write(least) : "";
        return (
            "",
            type,
            QuantityText.Voltage.Write(lamp.ReferenceVoltage),
            QuantityText.Current.Write(lamp.ReferenceCurrent),
            minimum
        );
    }

    private static string Word(CableKind? cable) =>
        cable is { } kind ? RunsReader.Cables.First(c => c.Value == kind).Word : "";

    private static string YesOrNo(bool? value) =>
        value is { } known
            ? known
                ? "yes"
                : "no"
            : "";

    private static string Text(string? text) => CellText.Guard(text ?? "");

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
