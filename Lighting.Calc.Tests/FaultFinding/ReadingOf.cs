// Short forms for single readings.

namespace Lighting.Calc.Tests.FaultFinding;

internal static class ReadingOf
{
    public static Reading Meter(string when, string point, double volts) =>
        new()
        {
            When = Condition.Parse(when),
            Point = point,
            Instrument = Instrument.Meter,
            Voltage = UnitsNet.ElectricPotential.FromVolts(volts),
        };

    public static Reading Seen(string when, string point, Brightness look, Instrument with = Instrument.Visual) =>
        new()
        {
            When = Condition.Parse(when),
            Point = point,
            Instrument = with,
            Seen = look,
        };

    /// <summary>What a list reads of a reading that was written to it.</summary>
    public static ListResult<BikeLists> ReadBack(Bike bike, Reading reading) =>
        new BikeLists { Bike = bike }.WithReadings(
            ListSource.Empty.With("readings.csv", BikeListsWriter.Write([reading]))
        );
}
