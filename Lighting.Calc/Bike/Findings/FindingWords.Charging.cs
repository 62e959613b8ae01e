using UnitsNet;

namespace Lighting.Calc;

internal static partial class FindingWords
{
    private static string? OfCharging(Finding finding) =>
        finding.Kind switch
        {
            FindingKind.ChargingNotSolved => $"No balance{In(finding)}: {finding.Detail}",
            FindingKind.LoadsExceedOutput =>
                $"{finding.Detail} ({finding.Setting}): the loads draw {Text(finding.Value)} on average, more than the "
                    + $"charging output at any known speed{AtMost(finding)}. The battery discharges while riding. "
                    + $"Reduce the load (LED lamps), or fit a generator of more output; until then charge the "
                    + $"battery after rides.",
            FindingKind.DutyAssumed =>
                $"No duty is listed of {string.Join(", ", finding.Parts)}: counted as on for {Text(finding.Value)} of "
                    + $"a ride in averages. State 'duty' in lamps.csv.",
            FindingKind.GeneratorConverted =>
                $"The charging list is taken as that of the same winding: at {Figure(finding, 1)} each current comes "
                    + Invariant($"at {((Ratio)finding.Value!).DecimalFractions:0.00}")
                    + $" times the speed of {Figure(finding, 0)}. It needs a regulator for {Figure(finding, 1)}, on a "
                    + $"dynamo a cut-out and a field that bear it; what a rewound generator gives, list with "
                    + $"its own charging list.",
            FindingKind.BatteryConverted =>
                $"The battery is taken as more of the same cells"
                    + (finding.Figures.IsEmpty ? "" : $", {Figure(finding, 0)}")
                    + $": one of {Text(finding.Value)} and the same size has fewer ampere-hours.",
            FindingKind.NoCounterpartListed =>
                $"No lamp for {Text(finding.Value)} of the same cap, use and about the same watts is listed in "
                    + $"place of {Listed(finding)}: taken as of the same watts. Choose a lamp for the "
                    + $"socket, and compare again with it.",
            FindingKind.LoadsConverted =>
                $"To be replaced too, and taken as of the same watts at {Text(finding.Value)}: "
                    + $"{Listed(finding)}.",
            FindingKind.RegulatorHeatUnrated =>
                $"The {finding.Detail} takes {Figure(finding, 1)} and makes {Text(finding.Value)} of heat"
                    + $"{Speed(finding)}. Its rating is not listed: check that it and its heat sink are "
                    + $"made for that, and state 'regulator rating' in bike.csv.",
            FindingKind.BreakEvenReached =>
                $"{finding.Detail} ({finding.Setting}): the loads draw {Figure(finding, 0)} on average; the battery "
                    + $"charges from {Text(finding.Value)}.",
            FindingKind.BreakEvenBelowList =>
                $"{finding.Detail} ({finding.Setting}): the loads draw {Figure(finding, 0)} on average; the battery "
                    + $"charges at {Text(finding.Value)} already, the slowest point of the charging list.",
            FindingKind.BreakEvenUnknown =>
                $"{finding.Detail} ({finding.Setting}): break-even speed unknown. The curves of the charging list have "
                    + $"no speeds in common.",
            FindingKind.OutputFallsBelowLoads =>
                $"{finding.Detail} ({finding.Setting}): above {Text(finding.Value)} the falling output no longer "
                    + $"covers the loads.",
            FindingKind.SurplusOutput =>
                $"{Text(finding.Value)} surplus output{Speed(finding)} ({FullBattery(finding)}). A regulator must keep "
                    + $"this out of a full battery: state 'regulator' in bike.csv.",
            FindingKind.Overcharge =>
                $"Overcharge: {Text(finding.Value)}{Speed(finding)} flows into a full battery because there is no "
                    + $"regulator ({FullBattery(finding)}). Fit a regulator.",
            FindingKind.BatteryOvervoltage =>
                $"Overcharge: {Text(finding.Value)} at the battery{Speed(finding)}, above {Text(finding.Limit)}: it "
                    + "gasses and dries out, and lamps burn out early. Measure it; if it is so, the regulator must "
                    + "hold less.",
            FindingKind.ShuntLimitExceeded =>
                $"Overcharge: {Text(finding.Value)}{Speed(finding)} beyond the {finding.Detail}'s {Figure(finding, 1)} "
                    + $"flows into a full battery ({FullBattery(finding)}).",
            FindingKind.NoRideList =>
                "No ride is listed: the charge over a ride and the usual setting are not included.",
            FindingKind.RideOutputUnknown =>
                $"Charging output at {Text(finding.Value)} unknown ({finding.Detail}), and so is the ride's total.",
            FindingKind.BatteryFlat => $"The battery is flat {Text(finding.Value)} into it.",
            FindingKind.BatteryFull => $"The battery is full {Text(finding.Value)} into it.",
            FindingKind.RideCharge =>
                $"The battery {(Negative(finding) ? "loses" : "could gain")} {Text(Size(finding))} over "
                    + $"{Figure(finding, 0)}"
                    + $"{(finding.Figures.Length > 1 ? $" and ends at {Figure(finding, 1)}" : "")}.",
            FindingKind.BatteryRunTime =>
                $"Engine off with '{finding.Setting}' ({Figure(finding, 0)}): discharges from {Figure(finding, 1)} to "
                    + $"{Figure(finding, 2)} ({Figure(finding, 3)} at rest) in {Text(finding.Value)}.",
            FindingKind.CapacityNotStated => "Battery run time unknown: 'battery capacity' is not stated.",
            FindingKind.NoBatteryToBalance =>
                "The lighting coil feeds the lamps directly: this balance would hold only with a battery and a "
                    + "rectifier.",
            FindingKind.OutputFalls =>
                "The output falls as the engine speed rises, which few machines do: check the charging list.",
            FindingKind.OneChargingPoint =>
                $"The charging list has one point, {Text(finding.Value)}: the output is known at that speed only.",
            FindingKind.ChargingFit =>
                $"{finding.Detail}: tends to {Figure(finding, 0)}, {Figure(finding, 1)}. {Deviation(finding, 2)}",
            FindingKind.RegulatorOverloaded =>
                $"Takes {Figure(finding, 1)} and makes {Text(finding.Value)} of heat{Speed(finding)}, "
                    + $"more than its rated {Text(finding.Limit)}: fit a larger one, or one that does not dissipate.",
            FindingKind.ChargingVoltageTooLow =>
                $"Charging voltage {Text(finding.Value)}, not above the {Text(finding.Limit)} of a full battery: the "
                    + $"battery is never fully charged.",
            FindingKind.ChargingVoltageLow =>
                $"Charging voltage {Text(finding.Value)}, below the usual {Text(finding.Limit)} to "
                    + $"{Figure(finding, 0)}: the battery charges slowly.",
            FindingKind.ChargingVoltageHigh =>
                $"Charging voltage {Text(finding.Value)}, above the usual {Figure(finding, 0)} to "
                    + $"{Text(finding.Limit)}: the battery gasses and lamps fail early.",
            FindingKind.BatteryNotFull =>
                $"Battery voltage {Text(finding.Value)} at rest: {Figure(finding, 0)} charged. Ride and battery run "
                    + $"time start from {Figure(finding, 1)}.",
            FindingKind.LedOnAlternatingCurrent =>
                $"An LED on alternating current lights in one half of the wave unless it has its own rectifier, and "
                    + $"receives the peak voltage, 1.4 times the rms voltage stated here.{Also(finding)}",
            FindingKind.LampBurnsOut =>
                $"{Text(finding.Value)}{Speed(finding)}, {Ratio(finding.Value, finding.Limit)} times its rated "
                    + $"{Text(finding.Limit)}: it burns out.",
            FindingKind.LampLifeShortened =>
                $"{Text(finding.Value)}{Speed(finding)} (rated {Text(finding.Limit)}): life {Figure(finding, 1)} of "
                    + $"rated life.",
            FindingKind.HalfLight => $"Half its light from about {Text(finding.Value)}.",
            FindingKind.HalfLightNotReached => $"Less than half its light up to {Text(finding.Value)}.",
            FindingKind.FailureBurnsOutAnother => $"{Failure(finding)} and burns out in turn.{Resistor(finding)}",
            FindingKind.FailureShortensLife => $"{Failure(finding)} and its life is shortened.{Resistor(finding)}",
            FindingKind.RegulatorAcrossCoil =>
                $"To hold {Text(finding.Limit)}{Speed(finding)}, a regulator across the coil takes "
                    + $"{Text(finding.Value)} ({Figure(finding, 1)} if it dissipates them).",
            FindingKind.CoilFit =>
                $"Fitted coil: {Figure(finding, 0)} open-circuit and {Figure(finding, 1)} reactance per 1000 rpm. "
                    + $"{Deviation(finding, 2)}",
            _ => null,
        };

    private static string AtMost(Finding finding) =>
        finding.Limit is { } limit ? $", {Text(limit)} at most" : "";

    private static string Speed(Finding finding) => $" at {Figure(finding, 0)}{In(finding)}";

    private static string FullBattery(Finding finding) =>
        finding.Limit is { } limit
            ? $"a full battery takes about {Text(limit)} without gassing"
            : "battery capacity not stated";

    private static string Failure(Finding finding) =>
        $"If it fails{Speed(finding)}, {finding.Parts[0]} rises from {Text(finding.Limit)} to {Text(finding.Value)}";

    private static string Resistor(Finding finding) =>
        finding.Figures.Length < 3
            ? ""
            : $" A {Figure(finding, 1)} resistor in its place dissipates {Figure(finding, 2)} and holds the voltage.";

    private static string Deviation(Finding finding, int speed) =>
        $"Largest deviation {Text(finding.Value)} at "
        + $"{Figure(finding, speed)}"
        + $"{(finding.Severity == Severity.Note ? "." : ": it does not describe the list well.")}";

    private static bool Negative(Finding finding) => (double)finding.Value!.Value < 0;

    private static ElectricCharge Size(Finding finding) =>
        ElectricCharge.FromAmpereHours(Math.Abs(((ElectricCharge)finding.Value!).AmpereHours));
}
