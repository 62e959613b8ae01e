namespace Lighting.Calc;

/// <content>The sentences of fault finding: readings, symptoms, the connection of instruments.</content>
internal static partial class FindingWords
{
    private const string LeftOut = "The reading is left out.";

    private const string Ohmmeter =
        "Subtract the reading with the probe tips touched together (lead resistance). Measured in circuit, a part "
        + "reads in parallel with everything connected to it; disconnect one end to measure it alone. A filament reads "
        + "its cold resistance, 1/10 to 1/15 of its hot resistance. What is under 0.1 Ω no hand meter resolves: its "
        + "voltage drop under load judges it.";

    private static string? OfFaultFinding(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.ReadingNotExplained =>
                $"No fault and no pair of faults explains all readings. Repeat this one: {finding.Detail}.",
            FindingKind.ContradictoryReadings =>
                $"Contradictory readings{In(finding)}: {string.Join(" and ", finding.Parts)}. They are left out; "
                    + $"repeat one.",
            FindingKind.ReadingOutvoted => $"Left out{In(finding)}, since more readings of the same place differ: "
                + $"{string.Join(" and ", finding.Parts)}.",
            FindingKind.ReadingAboveBattery =>
                $"{finding.Detail} is above the battery voltage, {Text(finding.Limit)}. Check that the engine is off "
                    + $"(else state it: engine=3000 rpm) and the range of the meter. {LeftOut}",
            FindingKind.ReadingAboveSupply =>
                $"{finding.Detail} is above the supply voltage, {Text(finding.Limit)}. Check the range of the meter. "
                    + $"{LeftOut}",
            FindingKind.ReadingAboveCoil =>
                $"{finding.Detail} is above the open-circuit voltage of the lighting coil, {Text(finding.Limit)}. "
                    + $"Check the engine speed ({Text(finding.Figures[0])}) and the range of the meter. {LeftOut}",
            FindingKind.ReadingBelowZero =>
                $"{finding.Detail} is below zero. Connect the black lead to {Bike.BatteryMinus}. {LeftOut}",
            FindingKind.ReadingFromPositiveFrame =>
                $"{finding.Detail} is below zero. Connect the black lead to {Bike.BatteryMinus}, not to the frame, "
                    + $"which is positive. {LeftOut}",
            FindingKind.ResistanceBelowZero => $"{finding.Detail} is below zero. {LeftOut}",
            FindingKind.ReadingOfOtherInstrument =>
                $"{finding.Detail} is not a reading of the instrument '{finding.Parts[0]}'. {LeftOut}",
            FindingKind.ReadingPlaceUnknown =>
                $"{finding.Detail}{(finding.Parts.IsEmpty ? "." : $"; {Near(finding)}")} {LeftOut}",
            FindingKind.SymptomSettingUnknown => $"'{finding.Subject}' is not a setting: expected {finding.Detail}.",
            FindingKind.SymptomMissing =>
                "No observation is given: expected, for example, 'tail lamp dark, headlamp good'.",
            FindingKind.SymptomLookUnknown =>
                $"'{finding.Subject}' does not end in how the lamp looks: expected dark, dim, good or bright.",
            FindingKind.SymptomLampUnknown =>
                $"The bike has no lamp '{finding.Subject}'; the lamps are {string.Join(", ", finding.Parts)}.",
            FindingKind.SymptomLampAmbiguous =>
                $"'{finding.Subject}' may be {string.Join(" or ", finding.Parts)}: which one?",
            FindingKind.ReadingTextUnknown => $"'{finding.Subject}' is not a reading: expected {finding.Detail}.",
            FindingKind.SymptomLampMisspelt => $"The bike has no lamp '{finding.Subject}'; {Near(finding)}",
            FindingKind.MeterOnBattery =>
                $"Connect the black lead of the meter and the clip of the test lamp to {Bike.BatteryMinus}, "
                    + $"{(finding.Value is null ? "engine off" : $"battery held at {Text(finding.Value)}")}. Voltages "
                    + $"assume a meter of 10 MΩ input resistance.",
            FindingKind.MeterWithEngineRunning =>
                $"Run the engine at {Text(finding.Value)}, black lead of the meter and clip of the test lamp on "
                    + $"{Bike.BatteryMinus}. Hold the engine speed steady: the limits allow "
                    + $"±{Text(finding.Figures[0])}. Voltages assume a meter of 10 MΩ input resistance and a charged "
                    + $"battery. Resistance is measured with the engine off.",
            FindingKind.ShortNotConsidered =>
                "A short to the frame is not considered: with no fuse it burns out the wire.",
            FindingKind.MeterOnPositiveEarth =>
                $"The frame is {Bike.BatteryPlus}. With the black lead on {Bike.BatteryMinus} the live side reads near "
                    + $"zero and the frame the battery voltage. With the black lead on the frame the live side reads "
                    + $"negative, as in the column for the frame, and a test lamp clipped to the frame is lit at the "
                    + $"live "
                    + $"points, where it is off in this sheet.",
            FindingKind.ReadingsFromFrame =>
                $"The voltages are explained where they were taken between the points and '{finding.Subject}', their "
                    + $"sign left out. They then show: {finding.Detail} Enter such a reading as 'POINT to "
                    + $"{finding.Subject}', below zero, or take them with the black lead on {Bike.BatteryMinus}.",
            FindingKind.MeterOnCoil =>
                $"Run the engine at {Text(finding.Value)} with the meter on AC voltage: voltages are rms and assume a "
                    + $"meter of 10 MΩ input resistance. {Bike.BatteryPlus} and {Bike.BatteryMinus} are the two ends "
                    + $"of "
                    + $"the lighting coil; connect one lead of the meter and the clip of the test lamp to "
                    + $"{Bike.BatteryMinus}. Hold the engine speed steady: the limits allow "
                    + $"±{Text(finding.Figures[0])} "
                    + $"speed and ±{Text(finding.Figures[1])} coil output.",
            FindingKind.CoilFitted =>
                $"The lighting coil is fitted to the charging list: open-circuit voltage {Text(finding.Value)} at this "
                    + $"speed. A lamp looks good if it is as bright as expected at this speed, not at its rated "
                    + $"voltage.",
            FindingKind.UnpluggedAtSpeed =>
                "Do not unplug a lamp, or its wire, at high engine speed: the voltage rises and the remaining lamps "
                    + "burn out.",
            FindingKind.SpeedOutsideCharging =>
                $"{Text(finding.Value)} is outside the charging list ({Text(finding.Figures[0])} to "
                    + $"{Text(finding.Figures[1])}), to which the lighting coil is fitted.",
            FindingKind.OhmmeterOffBattery => $"Disconnect the battery before measuring resistance. {Ohmmeter}",
            FindingKind.OhmmeterOffCoil =>
                $"Stop the engine and unplug the lighting coil before measuring resistance. {Ohmmeter}",
            _ => null,
        };

    private static string Near(Finding finding) => SpellingSuggestions.Question(finding.Parts.Select(n => $"'{n}'"));
}
