using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Instructions for taking readings that compare with the calculated ones.</summary>
internal static class ReadingNotes
{
    public static ImmutableArray<Finding> Of(FaultCircuit circuit)
    {
        Bike bike = circuit.Bike;
        TestSupply supply = circuit.Supply;
        if (supply.Coil is null)
        {
            return
            [
                supply.Speed is { } running
                    ? new(FindingKind.MeterWithEngineRunning, Severity.Note, "meter")
                    {
                        Value = running,
                        Figures = [circuit.Options.SpeedTolerance],
                    }
                    : new Finding(FindingKind.MeterOnBattery, Severity.Note, "meter")
                    {
                        Value =
                            supply.OpenVolts == bike.BatteryVoltage.Volts
                                ? null
                                : ElectricPotential.FromVolts(supply.OpenVolts),
                    },
                .. bike.Fuses.IsEmpty
                    ? [new Finding(FindingKind.ShortNotConsidered, Severity.Caution, "fuse")]
                    : ImmutableArray<Finding>.Empty,
                .. bike.Earth == Earth.Positive
                    ? [new Finding(FindingKind.MeterOnPositiveEarth, Severity.Caution, "positive earth")]
                    : ImmutableArray<Finding>.Empty,
                new(FindingKind.OhmmeterOffBattery, Severity.Note, "ohmmeter"),
            ];
        }

        RotationalSpeed least = bike.Charging.Min(c => c.Speed),
            most = bike.Charging.Max(c => c.Speed);
        var speed = RotationalSpeed.FromRevolutionsPerMinute(supply.Rpm);
        return
        [
            new(FindingKind.MeterOnCoil, Severity.Note, "meter")
            {
                Value = speed,
                Figures = [circuit.Options.SpeedTolerance, circuit.Options.CoilTolerance],
            },
            new(FindingKind.CoilFitted, Severity.Note, "lighting coil")
            {
                Value = ElectricPotential.FromVolts(supply.OpenVolts),
            },
            new(FindingKind.UnpluggedAtSpeed, Severity.Caution, "lamps"),
            .. speed < least || speed > most
                ?
                [
                    new Finding(FindingKind.SpeedOutsideCharging, Severity.Caution, "engine speed")
                    {
                        Value = speed,
                        Figures = [least, most],
                    },
                ]
                : ImmutableArray<Finding>.Empty,
            new(FindingKind.OhmmeterOffCoil, Severity.Note, "ohmmeter"),
        ];
    }
}
