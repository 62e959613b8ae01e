using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>How readings are to be taken so that they mean what is computed.</summary>
internal static class ReadingNotes
{
    public static ImmutableArray<Finding> Of(FaultCircuit circuit)
    {
        var notes = ImmutableArray.CreateBuilder<Finding>();
        Bike bike = circuit.Bike;
        TestSupply supply = circuit.Supply;
        if (supply.Coil is null)
        {
            Add(Severity.Note, "meter", $"Black lead of the meter and clip of the test lamp on {Bike.BatteryMinus}, {(circuit.Options.Supply is { } held ? $"battery held at {FaultWords.Volts(held.Volts)}" : "engine off")}; the volts are those of a 10 MΩ meter.");
            if (bike.Fuses.IsEmpty)
                Add(Severity.Caution, "fuse", "The bike has no fuse: a short to the frame is not among the faults, for it burns its wire.");
            if (bike.Earth == Earth.Positive)
                Add(Severity.Caution, "positive earth", $"The frame is {Bike.BatteryPlus}. With the black lead on {Bike.BatteryMinus} the live side reads near zero and the frame full volts. With the black lead on the frame the live side reads below zero, by the volts in the sheet's column for the frame; a test lamp clipped to the frame lights at the live points, where this sheet's is dark.");
        }
        else
        {
            double least = bike.Charging.Min(c => c.Speed.RevolutionsPerMinute), most = bike.Charging.Max(c => c.Speed.RevolutionsPerMinute);
            Add(Severity.Note, "meter", $"Engine at {FaultWords.Rpm(supply.Rpm)}, meter on AC volts: all volts are rms, of a 10 MΩ meter. {Bike.BatteryPlus} and {Bike.BatteryMinus} are the two ends of the lighting coil; one lead of the meter and the clip of the test lamp go on {Bike.BatteryMinus}. Hold the speed: the ranges allow for {Share(circuit.Options.SpeedTolerance)} of it and for a coil {Share(circuit.Options.CoilTolerance)} off its list.");
            Add(Severity.Note, "lighting coil", $"The coil is fitted to the charging list: {FaultWords.Volts(supply.OpenVolts)} without load at this speed. Lamps look good here when they are as bright as they should be at this speed, not at full volts.");
            Add(Severity.Caution, "lamps", "With the engine running fast unplug no lamp, and no wire to one: the lamps that stay on get its share and burn out.");
            if (supply.Rpm < least || supply.Rpm > most)
                Add(Severity.Caution, "engine speed", $"{FaultWords.Rpm(supply.Rpm)} lies outside the charging list, which the coil is fitted to.");
        }

        Add(Severity.Note, "ohmmeter", $"{(supply.Coil is null ? "Disconnect the battery first." : "Stop the engine and unplug the coil first.")} Take off what the meter shows with its tips together. In place a part is read together with all that is joined to it; a lamp's ohms are those of its cold filament, a tenth to a fifteenth of what it has when lit.");
        return notes.ToImmutable();

        void Add(Severity severity, string subject, string message) => notes.Add(new Finding(severity, subject, message));
    }

    private static string Share(UnitsNet.Ratio ratio) => FormattableString.Invariant($"{ratio.Percent:0.#} %");
}
