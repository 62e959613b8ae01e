using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A reading in words: <c>ignition=on; lights=main: tail feed 11.9 V</c>.</summary>
/// <remarks>
/// After an optional setting and a colon: a point and voltage, or two points joined by <c>to</c>; a fuse and amps; a
/// part and ohms, or <c>open</c> or <c>OL</c>, or two points; <c>test lamp</c>, a point and <c>lit</c>, <c>dim</c> or
/// <c>off</c>; <c>wiggle</c>, a run, switch, fuse or holder and <c>flickers</c> or <c>steady</c>; else how a lamp
/// looks, as <see cref="SymptomText"/> has it. Behind a measurement <c>with</c>, a run, lamp or fuse and
/// <c>unplugged</c>.
/// </remarks>
internal sealed class ReadingText
{
    private const string TestLamp = "test lamp ";
    private const string Wiggle = "wiggle ";
    private const string Expected =
        "for example 'tail feed 11.9 V', 'tail feed to rear return 11.2 V', 'rear earth 0.3 ohm', 'test lamp tail feed "
        + "lit' or 'tail lamp dark'";

    private ReadingText(ImmutableArray<Reading> readings, ImmutableArray<Finding> findings)
    {
        Readings = readings;
        Findings = findings;
    }

    /// <summary>The readings.</summary>
    public ImmutableArray<Reading> Readings { get; }

    /// <summary>Errors in the text.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Reads a text.</summary>
    /// <param name="bike">The bike; it needs runs.</param>
    /// <param name="text">The text.</param>
    /// <returns>The reading understood or, as <see cref="Findings"/>, why not: a text never throws.</returns>
    /// <exception cref="ArgumentException">The bike has no runs, or the bike or the text is null.</exception>
    public static ReadingText Read(Bike bike, string text)
    {
        ArgumentNullException.ThrowIfNull(bike);
        ArgumentNullException.ThrowIfNull(text);
        FaultFinder.RequireRuns(bike);
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        if (!Condition.TryParse(colon < 0 ? "" : text[..colon], out Condition when, out string? expected))
            return new ReadingText(
                [],
                [
                    new Finding(FindingKind.SymptomSettingUnknown, Severity.Fault, text[..colon].Trim())
                    {
                        Detail = expected,
                    },
                ]
            );
        string said = text[(colon + 1)..].Trim();
        if (Measured(bike, when, said) is { } reading)
            return new ReadingText([reading], []);
        if (PeopleWords.Observation(said) is null && !PeopleWords.IsNothing(said))
            return new ReadingText(
                [],
                [new Finding(FindingKind.ReadingTextUnknown, Severity.Fault, said) { Detail = Expected }]
            );
        SymptomText seen = SymptomText.Read(bike, text);
        return new ReadingText(seen.Readings, seen.Findings);
    }

    /// <summary>A test's row with the answer of a person, in any of the words; null where the answer is none for this
    /// instrument.</summary>
    internal static Reading? Answered(Reading row, string answer)
    {
        string said = answer.Trim();
        if (row.Instrument == Instrument.Wiggle)
            return PeopleWords.Wiggle(said) is { } watched ? row with { Seen = watched } : null;
        if (row.Instrument.IsLook())
            return PeopleWords.Look(said) is { } seen ? row with { Seen = seen } : null;
        if (row.Instrument == Instrument.Ohmmeter && IsOpen(said))
            return row with { IsOpen = true };
        return row.Instrument switch
        {
            Instrument.Meter when CellRanges.MeterVolts.TryParse(said, out UnitsNet.ElectricPotential volts, out _) =>
                row with
                {
                    Voltage = volts,
                },
            Instrument.Ammeter when CellRanges.MeterAmps.TryParse(said, out UnitsNet.ElectricCurrent amps, out _) =>
                row with
                {
                    Current = amps,
                },
            Instrument.Ohmmeter when CellRanges.MeterOhms.TryParse(said, out UnitsNet.ElectricResistance ohms, out _) =>
                row with
                {
                    Resistance = ohms,
                },
            _ => null,
        };
    }

    private static bool IsOpen(string word) =>
        Name.Equal(word, ReadingsReader.Open) || Name.Equal(word, ReadingsReader.OverLimit);

    private static Reading? Measured(Bike bike, Condition when, string said)
    {
        int with = said.LastIndexOf(FaultWords.With, StringComparison.OrdinalIgnoreCase);
        if (with < 0 || !said.EndsWith(FaultWords.Apart, StringComparison.OrdinalIgnoreCase))
            return MeasuredWhole(bike, when, said);
        string unplugged = said[(with + FaultWords.With.Length)..^FaultWords.Apart.Length].Trim();
        return MeasuredWhole(bike, when, said[..with]) is { } reading
            ? reading with
            {
                Unplugged = unplugged,
            }
            : null;
    }

    private static Reading? MeasuredWhole(Bike bike, Condition when, string said)
    {
        if (said.StartsWith(TestLamp, StringComparison.OrdinalIgnoreCase))
            return PeopleWords.Observation(said[TestLamp.Length..]) is var (at, seen)
                ? new Reading
                {
                    When = when,
                    Point = at.StartsWith("at ", StringComparison.OrdinalIgnoreCase) ? at[3..] : at,
                    Instrument = Instrument.TestLamp,
                    Seen = seen,
                }
                : null;
        if (said.StartsWith(Wiggle, StringComparison.OrdinalIgnoreCase))
        {
            string moved = said[Wiggle.Length..].Trim();
            int end = moved.LastIndexOf(' ');
            return end < 0
                ? null
                : Answered(
                    new Reading
                    {
                        When = when,
                        Point = moved[..end].Trim(),
                        Instrument = Instrument.Wiggle,
                    },
                    moved[end..]
                );
        }

        // The value is the last word or, with its unit apart, the last two.
        var graph = new HarnessGraph(bike);
        string[] words = said.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (int count = 1; count <= 2 && count < words.Length; count++)
        {
            string place = string.Join(' ', words[..^count]),
                value = string.Join(' ', words[^count..]);
            if (char.IsAsciiDigit(value[^1]))
                continue;
            foreach (Instrument instrument in new[] { Instrument.Meter, Instrument.Ammeter, Instrument.Ohmmeter })
                if (Answered(At(graph, when, place, instrument), value) is { } reading)
                    return reading;
        }

        return null;
    }

    private static Reading At(HarnessGraph graph, Condition when, string place, Instrument instrument)
    {
        var reading = new Reading
        {
            When = when,
            Point = place,
            Instrument = instrument,
        };
        // One of two may be misspelt, which is then told of that one.
        return
            instrument != Instrument.Ammeter
            && graph.NumberOf(place) < 0
            && (JumperLead.Of(place, IsPoint) ?? JumperLead.Of(place, p => IsPoint(p) || !IsPart(p))) is { } two
            && (IsPoint(two.From) || IsPoint(two.To))
            ? reading with
            {
                Point = two.From,
                To = two.To,
            }
            : reading;

        bool IsPoint(string name) => graph.NumberOf(name) >= 0 || BenchPoints.IsGenerator(name);
        bool IsPart(string name) => graph.Parts.Any(p => Name.Equal(p.Name, name));
    }
}
