using System.Globalization;

namespace Lighting.Calc;

/// <summary>Writes a bike's lists as CSV text that reads back as the same bike.</summary>
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
        Bike bike = lists.Bike;
        var texts = new Dictionary<string, string>
        {
            [ListSchema.Bike.File] = ListTextWriter.Write(ListSchema.Bike, Items(bike)),
            [ListSchema.Lamps.File] = ListTextWriter.Write(ListSchema.Lamps, bike.Lamps.Select(l => Lamp(l, bike))),
        };
        Add(ListSchema.Runs, bike.Runs.Select(Run));
        Add(ListSchema.Switches, bike.Switches.Select(Contact));
        Add(ListSchema.Fuses, bike.Fuses.Select(Fuse));
        Add(ListSchema.Charging, bike.Charging.Select(Point));
        Add(ListSchema.Ride, bike.Ride.Select(Stretch));
        Add(ListSchema.Swaps, lists.Swaps.Select(s => Swap(s, bike)));
        Add(ListSchema.Readings, lists.Readings.Select(Reading));
        return texts;

        void Add(ListSchema schema, IEnumerable<string[]> rows)
        {
            string[][] all = [.. rows];
            if (all.Length > 0)
                texts[schema.File] = ListTextWriter.Write(schema, all);
        }
    }

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
        yield return ["wire temperature", QuantityText.Temperature.Write(bike.WireTemperature)];
        yield return ["earth", bike.Earth == Earth.Positive ? "positive" : "negative"];
        if (bike.StatedDrop is { } drop)
            yield return ["allowed drop", QuantityText.Percent.Write(drop)];
        if (bike.Lighting == LightingSupply.Direct)
            yield return ["lighting", "direct"];
        if (bike.ZenerVoltage is { } zener)
            yield return ["regulator", $"{BikeReader.Zener} {QuantityText.Voltage.Write(zener)}"];
        else if (bike.Regulator != RegulatorKind.NotStated)
            yield return ["regulator", BikeReader.Regulators.First(r => r.Value == bike.Regulator).Word];
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
            QuantityText.Fraction.Write(lamp.Duty),
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
            run.Wire.Name,
            QuantityText.Length.Write(run.Length),
            Whole(run.Joints),
            run.AssumesJoints ? "" : QuantityText.Resistance.Write(run.JointResistance),
            Whole(run.Bundle),
            run.Colour?.Code ?? "",
            Word(run.Cable),
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
            fuse.Style == FuseStyle.Glass ? "glass" : "blade",
            fuse.Resistance is { } ohms ? QuantityText.Resistance.Write(ohms) : "",
            fuse.IsMarkedWithBlowingCurrent ? "blow" : "",
        ];

    private static string[] Point(ChargingPoint point) =>
        [QuantityText.Speed.Write(point.Speed), QuantityText.Current.Write(point.Current), Text(point.When.ToString())];

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
        ListTextWriter.Write(ListSchema.Readings, readings.Select(Reading));

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
            : reading.Seen is { } seen ? ReadingsReader.Looks.First(l => l.Value == seen).Word
            : "",
            Text(reading.To ?? ""),
            Text(reading.Jumper?.ToString() ?? ""),
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
