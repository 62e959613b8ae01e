using System.Globalization;

namespace Lighting.Calc;

/// <summary>Faults, readings and tests in words.</summary>
internal static class FaultWords
{
    private const double Wide = 10;

    /// <summary>What stands before the name of what is unplugged, in readings.</summary>
    public const string With = " with ";

    /// <summary>What stands behind it.</summary>
    public const string Apart = " unplugged";

    /// <summary>An instrument's word in lists.</summary>
    public static string InstrumentWord(Instrument instrument) =>
        ReadingsReader.Instruments.First(i => i.Value == instrument).Word;

    public static string Volts(double volts) =>
        string.Create(CultureInfo.InvariantCulture, $"{(Math.Abs(volts) < 0.005 ? 0 : volts):0.##} V");

    public static string Amperes(double amperes) =>
        string.Create(CultureInfo.InvariantCulture, $"{(Math.Abs(amperes) < 0.005 ? 0 : amperes):0.##} A");

    private static string Milliamps(double amperes) =>
        string.Create(CultureInfo.InvariantCulture, $"{1000 * amperes:0.#} mA");

    private static bool IsDrain(Reading reading) =>
        reading.Instrument == Instrument.Ammeter && Name.Equal(reading.Point, BenchPoints.BatteryLead);

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
        : ReadingsReader.WordOf(Instrument.Visual, look);

    /// <summary>How watched lamps are while a part is moved.</summary>
    public static string Wiggled(Brightness seen) =>
        ReadingsReader.WordOf(Instrument.Wiggle, seen <= Brightness.Dim ? Brightness.Dim : Brightness.Normal);

    /// <summary>A value of a test in words.</summary>
    public static string Value(Instrument instrument, double value, FaultFindingOptions options) =>
        instrument switch
        {
            Instrument.Meter => Volts(value),
            Instrument.Ammeter => Amperes(value),
            Instrument.Ohmmeter => Ohms(OhmScale.Ohms(value, options)?.Ohms ?? double.PositiveInfinity),
            Instrument.Wiggle => Wiggled(LookScale.Of(value)),
            _ => Look(LookScale.Of(value), instrument == Instrument.TestLamp),
        };

    /// <summary>A result with its place: <c>9.4 V at tail feed</c>.</summary>
    public static string At(Reading reading, string result)
    {
        string point = reading.Point,
            across = result == "open" ? "no connection" : result;
        string text = reading.Instrument switch
        {
            Instrument.Meter when reading.To is { } to => $"{result} from {point} to {to}",
            Instrument.Meter => $"{result} at {point}",
            Instrument.TestLamp => $"the test lamp {result} at {point}",
            Instrument.Ammeter when IsDrain(reading) => $"{result} in the lead of the battery",
            Instrument.Ammeter => $"{result} in place of the fuse {point}",
            Instrument.Ohmmeter when reading.To is { } to => $"{across} from {point} to {to}",
            Instrument.Ohmmeter => $"{across} across {point}",
            Instrument.GoodLamp => $"a good lamp in place of the {point} {result}",
            Instrument.Bench => $"the {point} {result} on the battery",
            Instrument.BenchReversed => $"the {point} {result} on the battery the other way round",
            Instrument.Wiggle => $"{result} while {point} is moved",
            _ => $"{point} {result}",
        };
        return text
            + (reading.Jumper is { } jumper ? $", with a jumper from {jumper}" : "")
            + (
                reading.Unplugged is not { } unplugged ? ""
                : Name.Equal(unplugged, point) ? " by itself"
                : $"{With}{unplugged}{Apart}"
            );
    }

    /// <summary>A reading as it was taken.</summary>
    public static string Result(Reading reading) =>
        reading.IsOpen ? "open"
        : reading.Voltage is { } v ? Volts(v.Volts)
        : reading.Current is { } drain && IsDrain(reading) && Math.Abs(drain.Amperes) < 1 ? Milliamps(drain.Amperes)
        : reading.Current is { } i ? Amperes(i.Amperes)
        : reading.Resistance is { } r ? Ohms(r.Ohms)
        : reading is { Instrument: Instrument.Wiggle, Seen: { } moved } ? Wiggled(moved)
        : reading.Seen is { } seen ? Look(seen, reading.Instrument == Instrument.TestLamp)
        : "nothing";

    public static string Of(Reading reading) => At(reading, Result(reading));

    public static string Rpm(double rpm) => string.Create(CultureInfo.InvariantCulture, $"{rpm:0} rpm");

    /// <summary>A test as something to do.</summary>
    public static string Instruction(in TestPlace test, FaultModel model)
    {
        FaultCircuit circuit = model.Circuit;
        if (test.IsOnGenerator)
            return OnGenerator(test);
        TestSupply supply = circuit.SupplyAt(test.EngineRpm);
        bool coil = supply.Coil is not null;
        string name = model.NameOf(test),
            engine =
                supply.Speed is not null ? $"engine at {Rpm(supply.Rpm)}, "
                : circuit.HasCharging ? "engine off, "
                : "";
        string jumper = test.HasJumper ? $"{Jumper(test, circuit)}, " : "";
        string apart = test.IsUnplugged ? $"{Unplugged(test, circuit)}, " : "";
        string live = $"{engine}with {test.Setting}, {apart}{jumper}";
        string black = test.To >= 0 ? circuit.Points[test.To] : Bike.BatteryMinus;
        string cold = coil ? "engine off and the lighting coil unplugged" : "battery disconnected";
        bool several =
            test.Instrument == Instrument.Visual && !test.IsEveryLamp && circuit.Bike.Lamps[test.Index].Quantity > 1;
        return test.Instrument switch
        {
            Instrument.Meter => $"{live}meter{(coil ? " on AC voltage" : "")} from {name} to {black}",
            Instrument.TestLamp when circuit.FuseOf(test) >= 0 => $"{live}test lamp in place of the fuse {name}",
            Instrument.TestLamp => $"{live}test lamp from {name} to {black}",
            Instrument.Ammeter when circuit.IsInBatteryLead(test) =>
                $"{live}ammeter between the earthed terminal of the battery and its lead",
            Instrument.Ammeter => $"{live}ammeter{(coil ? " on AC current" : "")} in place of the fuse {name}",
            Instrument.Ohmmeter when test.To >= 0 =>
                $"{cold}, with {test.Setting}, {apart}ohmmeter from {name} to {black}",
            Instrument.Ohmmeter when test.IsAlone => $"take the {name} out and put the ohmmeter across it",
            Instrument.Ohmmeter when circuit.MeasuredParts[test.Index] is { Holder: >= 0 } holder =>
                $"{cold}, {apart}ohmmeter from the shell of its holder to {circuit.Points[holder.To]}, and from its "
                    + "contact to the end of its wire: the higher of the two",
            Instrument.Ohmmeter => $"{cold}, with {test.Setting}, {apart}ohmmeter across {name}",
            Instrument.GoodLamp => $"{live}fit a known good lamp in place of the {name} and look at it",
            Instrument.Bench => $"take the {name} out and put it straight on the battery, its feed contact on the "
                + $"{LiveTerminal(circuit)} terminal",
            Instrument.Wiggle => $"{live}move '{name}' and its joints by hand and watch the lamps: do they flicker",
            _ when test.IsEveryLamp => $"{live}go round the bike and look at every lamp, the dark ones as well",
            Instrument.BenchReversed =>
                $"turn the {name} round on the battery, its feed contact on the earthed terminal",
            _ => $"{live}look at {(several ? "each of the " : "")}{name}",
        };
    }

    private static string Unplugged(in TestPlace test, FaultCircuit circuit) =>
        test.Unplugged == TestPlace.EveryLampOut ? "every lamp out of its socket"
        : circuit.MeasuredParts[test.Unplugged] is { Lamp: >= 0 } lamp ? $"the {lamp.Name} out of its socket"
        : circuit.Fuses.Contains(circuit.MeasuredParts[test.Unplugged].Conductor)
            ? $"the fuse {circuit.UnpluggedIn(test)} out"
        : $"the connector of the {circuit.UnpluggedIn(test)} apart";

    private static string OnGenerator(in TestPlace test)
    {
        string from = BenchPoints.NameOf(test.Index),
            to = test.To == 0 ? "the frame" : BenchPoints.NameOf(test.To);
        return test.Instrument == Instrument.Ohmmeter
            ? $"engine off, generator unplugged, ohmmeter from its lead '{from}' to '{to}'"
            : $"generator unplugged, engine at {Rpm(test.EngineRpm!.Value)}, meter on AC voltage from its lead "
                + $"'{from}' to '{to}'";
    }

    private static string LiveTerminal(FaultCircuit circuit) =>
        circuit.Bike.Earth == Earth.Negative ? "positive" : "negative";

    // The jumper carries no more than the wires behind it are fused for.
    private static string Jumper(in TestPlace test, FaultCircuit circuit)
    {
        int fuse = Math.Max(circuit.FuseBefore[test.JumperTo], circuit.FuseBefore[test.JumperFrom]);
        string rating =
            fuse >= 0
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"of at most {circuit.Bike.Fuses[fuse].Rating.Amperes:0.#} A"
                )
                : "no larger than the circuit's";
        return $"jumper with a fuse {rating} from {circuit.Points[test.JumperFrom]} to {circuit.Points[test.JumperTo]}";
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
