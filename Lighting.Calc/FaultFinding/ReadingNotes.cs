using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>How readings are to be taken so that they mean what is computed.</summary>
internal static class ReadingNotes
{
    public static ImmutableArray<Finding> Of(Bike bike)
    {
        var notes = ImmutableArray.CreateBuilder<Finding>();
        Add(Severity.Note, "meter", $"Black lead of the meter and clip of the test lamp on {Bike.BatteryMinus}, engine off; the volts are those of a 10 MΩ meter.");
        if (bike.Lighting == LightingSupply.Direct)
            Add(Severity.Caution, "direct lighting", $"The lighting coil's volts change with revs and load, and tell no fault. Unplug the coil, join a battery of {FaultWords.Volts(bike.BatteryVoltage.Volts)} to the harness in its place, {Bike.BatteryPlus} where the coil's wire was, with a fuse of its own: all readings here are with that battery.");
        else if (bike.Fuses.IsEmpty)
            Add(Severity.Caution, "fuse", "The bike has no fuse: a short to the frame is not among the faults, for it burns its wire.");
        if (bike.Earth == Earth.Positive)
            Add(Severity.Caution, "positive earth", $"The frame is {Bike.BatteryPlus}. With the black lead on {Bike.BatteryMinus} the live side reads near zero and the frame full volts. With the black lead on the frame the live side reads below zero, by the volts in the sheet's column for the frame; a test lamp clipped to the frame lights at the live points, where this sheet's is dark.");
        Add(Severity.Note, "ohmmeter", "Disconnect the battery first. In place a part is read together with all that is joined to it; a lamp's ohms are those of its cold filament, a tenth to a fifteenth of what it has when lit.");
        return notes.ToImmutable();

        void Add(Severity severity, string subject, string message) => notes.Add(new Finding(severity, subject, message));
    }
}
