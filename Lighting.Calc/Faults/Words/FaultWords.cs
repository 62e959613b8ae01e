using System.Globalization;

namespace Lighting.Calc;

/// <summary>Faults, readings and tests in words.</summary>
internal static class FaultWords
{
    private const double Wide = 10;

    /// <summary>An instrument's word in lists.</summary>
    public static string InstrumentWord(Instrument instrument) =>
        ReadingsReader.Instruments.First(i => i.Value == instrument).Word;

    public static string Volts(double volts) =>
        string.Create(CultureInfo.InvariantCulture, $"{(Math.Abs(volts) < 0.005 ? 0 : volts):0.##} V");

    public static string Amperes(double amperes) =>
        string.Create(CultureInfo.InvariantCulture, $"{(Math.Abs(amperes) < 0.005 ? 0 : amperes):0.##} A");

    public static string Ohms(double ohms) =>
        ohms switch
        {
            > OhmScale.OpenOhms / 2 => "open",
            >= 1e6 => Rounded(ohms / 1e6, "MΩ"),
            >= 1000 => Rounded(ohms / 1000, "kΩ"),
            _ => Rounded(ohms, "Ω"),
        };

    public static string Percent(double share) =>
        share is > 0 and < 0.01 ? "under 1 %"
        : share > 0.99 ? "over 99 %"
        : string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");

    public static string Look(Brightness look, bool testLamp) =>
        testLamp && look == Brightness.Normal ? "lit"
        : testLamp && look == Brightness.Dark ? "off"
        : ReadingsReader.Looks.First(l => l.Value == look).Word;

    /// <summary>A value of a test in words.</summary>
    public static string Value(Instrument instrument, double value, FaultFindingOptions options) =>
        instrument switch
        {
            Instrument.Meter => Volts(value),
            Instrument.Ammeter => Amperes(value),
            Instrument.Ohmmeter => Ohms(OhmScale.Ohms(value, options)?.Ohms ?? double.PositiveInfinity),
            _ => Look(LookScale.Of(value), instrument == Instrument.TestLamp),
        };

    /// <summary>A result with its place: <c>9.4 V at tail feed</c>.</summary>
    public static string At(Instrument instrument, string result, string point) =>
        instrument switch
        {
            Instrument.Meter => $"{result} at {point}",
            Instrument.TestLamp => $"the test lamp {result} at {point}",
            Instrument.Ammeter => $"{result} in place of the fuse {point}",
            Instrument.Ohmmeter => $"{(result == "open" ? "no connection" : result)} across {point}",
            _ => $"{point} {result}",
        };

    /// <summary>A reading as it was taken.</summary>
    public static string Result(Reading reading) =>
        reading.IsOpen ? "open"
        : reading.Voltage is { } v ? Volts(v.Volts)
        : reading.Current is { } i ? Amperes(i.Amperes)
        : reading.Resistance is { } r ? Ohms(r.Ohms)
        : reading.Seen is { } seen ? Look(seen, reading.Instrument == Instrument.TestLamp)
        : "nothing";

    public static string Of(Reading reading) => At(reading.Instrument, Result(reading), reading.Point);

    public static string Rpm(double rpm) => string.Create(CultureInfo.InvariantCulture, $"{rpm:0} rpm");

    public static string Instruction(FaultTest test, FaultCircuit circuit)
    {
        TestSupply supply = circuit.Supply;
        bool coil = supply.Coil is not null;
        bool several =
            test.Instrument == Instrument.Visual
            && circuit.Bike.Lamps.Any(l => l.Quantity > 1 && Name.Equal(l.Lamp, test.Point));
        string engine = coil ? $"engine at {Rpm(supply.Rpm)}, " : "";
        return test.Instrument switch
        {
            Instrument.Meter =>
                $"{engine}with {test.Setting}, meter{(coil ? " on AC voltage" : "")} from {test.Point} to "
                    + $"{Bike.BatteryMinus}",
            Instrument.TestLamp => $"{engine}with {test.Setting}, test lamp from {test.Point} to {Bike.BatteryMinus}",
            Instrument.Ammeter =>
                $"{engine}with {test.Setting}, ammeter{(coil ? " on AC current" : "")} in place of the fuse "
                    + $"{test.Point}",
            Instrument.Ohmmeter =>
                $"{(coil ? "engine off and the lighting coil unplugged" : "battery disconnected")}, with "
                    + $"{test.Setting}, ohmmeter across {test.Point}",
            _ => $"{engine}with {test.Setting}, look at {(several ? "each of the " : "")}{test.Point}",
        };
    }

    /// <summary>A fitted resistance with its range.</summary>
    public static string Fitted(FittedResistance fit)
    {
        string best = Ohms(fit.Best.Ohms),
            low = Ohms(fit.Low.Ohms);
        if (fit.High is not { } high)
            return $"above {low} or open";
        // The readings give no more than a range.
        if (high.Ohms > Wide * fit.Low.Ohms)
            return $"{low} to {Ohms(high.Ohms)}";
        return low == Ohms(high.Ohms) ? best : $"{best} ({low} to {Ohms(high.Ohms)})";
    }

    private static string Rounded(double number, string unit)
    {
        string text =
            number >= 100 ? "0"
            : number >= 10 ? "0.#"
            : number >= 1 ? "0.##"
            : "0.###";
        return $"{Significant(number).ToString(text, CultureInfo.InvariantCulture)} {unit}";
    }

    private static double Significant(double number)
    {
        if (number <= 0)
            return 0;
        double scale = Math.Pow(10, Math.Floor(Math.Log10(number)) - 1);
        return Math.Round(number / scale) * scale;
    }
}
