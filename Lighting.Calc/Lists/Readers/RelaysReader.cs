using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads <c>relays.csv</c>: the relays; a second row of one name is a further contact of it.</summary>
/// <remarks>Where a point is blank it is the relay's own terminal of DIN 72552: 86 and 85 of the coil, 30 and 87 of the
/// contact, of a break contact 87a. Where a figure is blank it is that of <see cref="Relay.Typical"/>.</remarks>
internal static class RelaysReader
{
    private static readonly string[] s_ofCoil =
    [
        "coil from",
        "coil to",
        "coil resistance",
        "coil watts",
        "pull in",
        "drop out",
    ];

    /// <summary>The points of a row: its columns and what is in them, or stands for a blank cell.</summary>
    public static IEnumerable<(string Column, string Point)> Points(ListRow row)
    {
        string name = row.Text("relay") ?? "";
        yield return ("coil from", row.Text("coil from") ?? $"{name} 86");
        yield return ("coil to", row.Text("coil to") ?? $"{name} 85");
        RelayContact contact = RelayContact.Typical(name, IsBreak(row));
        yield return ("from", row.Text("from") ?? contact.From);
        yield return ("to", row.Text("to") ?? contact.To);
    }

    /// <summary>The bike with the relays of the rows that are valid; the others are logged.</summary>
    public static Bike Read(ListTable table, Bike bike, bool hasRuns)
    {
        var relays = new Dictionary<string, (Relay Relay, string Where)>(Name.Comparer);
        var lamps = bike.Lamps.Select(l => l.Lamp).ToHashSet(Name.Comparer);
        var switches = bike.Switches.Select(c => c.Switch).ToHashSet(Name.Comparer);
        foreach (ListRow row in table.Rows)
        {
            string name = row.Required("relay") ?? "";
            if (lamps.Contains(name) || switches.Contains(name))
                row.Fault(
                    "relay",
                    name,
                    $"is the name of a {(lamps.Contains(name) ? "lamp" : "switch")} already",
                    "give each its own name"
                );
            if (name.IndexOfAny(['=', ';', '|']) >= 0)
                row.Fault("relay", name, "holds one of '=', ';' and '|', which conditions use", null);
            if (!hasRuns)
                row.Fault("relay", name, "needs runs.csv, to show what it is joined to", null);
            RelayContact contact = Contact(row, name);
            if (relays.TryGetValue(name, out (Relay Relay, string Where) known))
            {
                foreach (string column in s_ofCoil)
                    if (row.Text(column) is { } text)
                        row.Fault(
                            column,
                            text,
                            $"is of the coil, which is on {known.Where}",
                            "leave it blank in further rows of a relay"
                        );
                if (!row.IsFaulty && known.Relay.Contacts.Any(c => c.From == contact.From && c.To == contact.To))
                    row.Fault("relay", name, $"has this contact on {known.Where} already", null);
                if (!row.IsFaulty)
                    relays[name] = known with
                    {
                        Relay = known.Relay with { Contacts = known.Relay.Contacts.Add(contact) },
                    };
            }
            else if (Coil(row, name, bike) is { } relay && !row.IsFaulty)
                relays.Add(name, (relay with { Contacts = [contact] }, row.Where));
        }

        return relays.Values.Aggregate(bike, (all, r) => all.WithRelay(r.Relay));
    }

    private static Relay Coil(ListRow row, string name, Bike bike)
    {
        var typical = Relay.Typical(name, bike.SystemVoltage);
        ElectricResistance? ohms = row.Quantity("coil resistance", CellRanges.CoilOhms);
        Power? watts = row.Quantity("coil watts", CellRanges.LampWatts);
        if (ohms is not null && watts is not null)
            row.Fault(
                "coil watts",
                row.Text("coil watts")!,
                "is given beside the coil's resistance",
                "give one of the two"
            );
        ElectricPotential pullIn = row.Quantity("pull in", CellRanges.LampVolts) ?? typical.PullInVoltage,
            dropOut =
                row.Quantity("drop out", CellRanges.LampVolts)
                ?? (typical.DropOutVoltage <= pullIn ? typical.DropOutVoltage : pullIn);
        if (dropOut > pullIn)
            row.Fault(
                "drop out",
                row.Text("drop out") ?? "",
                "is above the voltage from which the relay pulls in",
                "expected at most that of 'pull in'"
            );
        string from = PointCells.Optional(row, "coil from") ?? typical.CoilFrom,
            to = PointCells.Optional(row, "coil to") ?? typical.CoilTo;
        if (Name.Equal(from, to))
            row.Fault("coil to", to, "is the point it comes from as well", "expected two different points");
        return typical with
        {
            CoilFrom = from,
            CoilTo = to,
            CoilResistance = ohms
                ?? (
                    watts is { } power
                        ? ElectricResistance.FromOhms(
                            bike.SystemVoltage.Volts * bike.SystemVoltage.Volts / (double)power.Watts
                        )
                        : typical.CoilResistance
                ),
            PullInVoltage = pullIn,
            DropOutVoltage = dropOut,
            Notes = row.Text(ListSchema.Notes),
        };
    }

    private static RelayContact Contact(ListRow row, string name)
    {
        bool isBreak = row.Word("contact", "a kind of contact", ("make", false), ("break", true)) ?? false;
        var typical = RelayContact.Typical(name, isBreak);
        string from = PointCells.Optional(row, "from") ?? typical.From,
            to = PointCells.Optional(row, "to") ?? typical.To;
        if (Name.Equal(from, to))
            row.Fault("to", to, "is the point it comes from as well", "expected two different points");
        return typical with
        {
            From = from,
            To = to,
            Resistance = row.Quantity("contact resistance", CellRanges.Ohms) ?? typical.Resistance,
        };
    }

    private static bool IsBreak(ListRow row) => Name.Equal(row.Text("contact") ?? "", "break");
}
