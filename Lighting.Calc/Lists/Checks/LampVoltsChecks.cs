using UnitsNet;

namespace Lighting.Calc;

/// <summary>Cautions for lamps of another system voltage, and for a bike whose system voltage was left at 12
/// V.</summary>
internal static class LampVoltsChecks
{
    public static void Caution(
        List<(ListRow Row, FittedLamp Lamp)> lamps,
        ElectricPotential systemVoltage,
        FaultLog log
    )
    {
        string system = QuantityText.Voltage.Write(systemVoltage);
        bool low = lamps.TrueForAll(l => IsLow(l.Lamp)),
            high = lamps.TrueForAll(l => IsHigh(l.Lamp));
        if (lamps.Count > 0 && (low || high))
        {
            double least = lamps.Min(l => l.Lamp.Specification.ReferenceVoltage.Volts),
                most = lamps.Max(l => l.Lamp.Specification.ReferenceVoltage.Volts);
            string span = least == most ? Shown(least) : $"{Shown(least)} to {Shown(most)}";
            log.Caution(
                new ListFault
                {
                    File = lamps[0].Row.File,
                    Problem = $"every lamp is for {span} V, and the bike is {system} V",
                    Expected = "set 'system voltage' in bike.csv if the bike is not",
                }
            );
            return;
        }

        foreach (
            (ListRow row, FittedLamp lamp) in lamps.Where(l => HasVolts(l.Row) && (IsLow(l.Lamp) || IsHigh(l.Lamp)))
        )
            row.Caution("volts", row.Text("volts"), $"is far from the system voltage, {system} V", null);

        static bool HasVolts(ListRow row) => row.Text("volts") is not null;
        bool IsLow(FittedLamp lamp) => lamp.Specification.ReferenceVoltage.Volts < 0.75 * systemVoltage.Volts;
        bool IsHigh(FittedLamp lamp) => lamp.Specification.ReferenceVoltage.Volts > 1.6 * systemVoltage.Volts;
    }

    /// <summary>Cautions once where lamps take a system voltage that no list states: a 6 V lamp draws twice the
    /// current.</summary>
    public static void CautionAssumed(ListTables tables, ElectricPotential systemVoltage)
    {
        if (BikeReader.States(tables.Find(ListSchema.Bike), "system voltage"))
            return;
        ListRow? first = (tables.Find(ListSchema.Lamps)?.Rows ?? []).FirstOrDefault(r =>
            r.Text("code") is null && r.Text("volts") is null && (r.Text("watts") ?? r.Text("amps")) is not null
        );
        first?.Caution(
            "volts",
            null,
            $"{QuantityText.Voltage.Write(systemVoltage)} V is assumed, since bike.csv states no 'system voltage'",
            "state it: at 6 V the same watts are twice the current"
        );
    }

    private static string Shown(double volts) => QuantityText.Voltage.Write(ElectricPotential.FromVolts(volts));
}
