using UnitsNet;

namespace Lighting.Calc;

/// <summary>Reads the lamp of a row: a published code, the words that people use for one, or power or current with the
/// voltage of that figure, which is the system voltage unless the row states it.</summary>
internal static class LampCells
{
    private static readonly string[] s_figures = ["volts", "watts", "amps", "minimum volts"];

    /// <summary>The type words of lists.</summary>
    public static readonly (string Word, LampType Value)[] Types =
    [
        ("filament", LampType.Filament),
        ("halogen", LampType.Halogen),
        ("led", LampType.Led),
        ("led resistor", LampType.LedResistor),
        ("fixed", LampType.Fixed),
        ("resistor", LampType.Resistor),
    ];

    /// <summary>Data of the lamp in a row; null, with the faults logged, if the row does not give them.</summary>
    /// <param name="row">A row of lamps or of swaps.</param>
    /// <param name="codeColumn">The column of the code.</param>
    /// <param name="systemVoltage">The bike's nominal voltage.</param>
    /// <param name="assumedType">The type of a lamp without a code that names none; null if it must name one.</param>
    public static LampSpecification? Read(
        ListRow row,
        string codeColumn,
        ElectricPotential systemVoltage,
        LampType? assumedType
    )
    {
        LampType? type = row.Word("type", "a type of lamp", Types);
        if (row.Text(codeColumn) is { } code)
            return Published(row, codeColumn, code, type, systemVoltage);
        ElectricPotential? volts =
            row.Text("volts") is null ? systemVoltage : row.Quantity("volts", CellRanges.LampVolts);
        Power? watts = TwoFilaments.Refuse(row, codeColumn) ? null : row.Quantity("watts", CellRanges.LampWatts);
        ElectricCurrent? amps = row.Quantity("amps", CellRanges.LampAmps);
        ElectricPotential? minimum = row.Quantity("minimum volts", CellRanges.LampVolts);
        if (type is null && row.Text("type") is null && assumedType is null)
            row.Fault(
                "type",
                null,
                "the cell is blank",
                $"a lamp without a code needs its type: {Choice.Of(Types.Select(t => t.Word))}"
            );
        NeedFigures(row, codeColumn);
        if ((type ?? assumedType) is not { } known || row.IsFaulty || volts is not { } v)
            return null;
        return CheckMinimum(row, known, v, minimum)
            ? watts is { } w
                ? LampSpecification.FromPower(known, v, w, minimum)
                : LampSpecification.FromCurrent(known, v, amps!.Value, minimum)
            : null;
    }

    private static LampSpecification? Published(
        ListRow row,
        string codeColumn,
        string code,
        LampType? type,
        ElectricPotential systemVoltage
    )
    {
        string[] extra = [.. s_figures.Where(f => row.Text(f) is not null)];
        foreach (string figure in extra)
            row.Fault(
                figure,
                row.Text(figure),
                $"is given with the code '{code}', which already gives it",
                "remove one of the two"
            );
        if (LedClassTable.TryFind(code, out LampSpecification? led) && led is not null)
            return Generic(row, codeColumn, led, type, systemVoltage);
        if (!LampTable.TryFind(code, systemVoltage, out PublishedLamp? lamp))
            lamp = LampWords.Of(code, systemVoltage).Read(row, codeColumn);
        if (lamp is null)
            return null;

        LampType published = lamp.Specification.Type;
        bool sameLaw =
            type == published
            || (type is LampType.Filament or LampType.Halogen && published is LampType.Filament or LampType.Halogen);
        if (type is not null && !sameLaw)
            row.Fault(
                "type",
                row.Text("type"),
                $"is given with the code '{lamp.Code}', which is of type {Types.First(t => t.Value == published).Word}",
                "remove one of the two"
            );
        if (lamp.SystemVoltage.Volts != systemVoltage.Volts)
            row.Caution(
                codeColumn,
                code,
                $"is published for {QuantityText.Voltage.Write(lamp.SystemVoltage)} V systems only, and the bike is "
                    + $"{QuantityText.Voltage.Write(systemVoltage)} V",
                null
            );
        return lamp.Specification;
    }

    private static LampSpecification Generic(
        ListRow row,
        string codeColumn,
        LampSpecification led,
        LampType? type,
        ElectricPotential systemVoltage
    )
    {
        if (type is not null && type != led.Type)
            row.Fault(
                "type",
                row.Text("type"),
                $"is given with the code '{led.Code}', which is of type {Types.First(t => t.Value == led.Type).Word}",
                "remove one of the two"
            );
        if (led.MaximumVoltage is { } most && most.Volts < systemVoltage.Volts)
            row.Caution(
                codeColumn,
                led.Code,
                $"has a maximum voltage of {QuantityText.Voltage.Write(most)} V, and the bike is "
                    + $"{QuantityText.Voltage.Write(systemVoltage)} V",
                null
            );
        else if (led.MinimumVoltage is { } least && least.Volts > systemVoltage.Volts)
            row.Caution(
                codeColumn,
                led.Code,
                $"needs at least {QuantityText.Voltage.Write(least)} V, and the bike is "
                    + $"{QuantityText.Voltage.Write(systemVoltage)} V",
                null
            );
        return led;
    }

    private static void NeedFigures(ListRow row, string codeColumn)
    {
        bool watts = row.Text("watts") is not null,
            amps = row.Text("amps") is not null;
        if (!watts && !amps && row.Text("volts") is null)
            row.Fault(
                codeColumn,
                null,
                "the lamp has no code and no figures",
                "give a code, or 'watts' or 'amps' and, unless they are those at the system voltage, 'volts'"
            );
        else if (!watts && !amps)
            row.Fault("watts", null, "the cell is blank", "a lamp with 'volts' needs 'watts' or 'amps'");
        else if (watts && amps)
            row.Fault(
                "amps",
                row.Text("amps"),
                $"is given with watts {OneLine.Quoted(row.Text("watts")!)}",
                "remove one of the two"
            );
    }

    private static bool CheckMinimum(ListRow row, LampType type, ElectricPotential volts, ElectricPotential? minimum)
    {
        if (minimum is not { } least)
            return true;
        if (type is not (LampType.Led or LampType.LedResistor))
            row.Fault(
                "minimum volts",
                row.Text("minimum volts"),
                $"is given for a lamp of type {Types.First(t => t.Value == type).Word}",
                "only led and led resistor have a minimum voltage"
            );
        else if (least.Volts >= volts.Volts)
            row.Fault(
                "minimum volts",
                row.Text("minimum volts"),
                "is not below the rated voltage of the lamp",
                $"expected less than {QuantityText.Voltage.Write(volts)} V"
            );
        return !row.IsFaulty;
    }
}
