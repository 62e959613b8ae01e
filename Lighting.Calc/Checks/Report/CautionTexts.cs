using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The cautions of every command, chosen by the bike and by what is done: the one place where they are
/// worded.</summary>
internal static class CautionTexts
{
    private const string Fuse =
        "Never bridge a fuse or fit a larger one than its wires are rated for: it protects the wire.";
    private const string Live = "Live tests: only with the prescribed instrument, guarded leads and no jewellery.";
    private const string Engine = "Engine running: ventilate; keep clear of chain, exhaust and ignition leads.";
    private const string Above = "A measured current above the fuse rating: switch off and find the short first.";
    private const string Hot =
        "Lamps and load resistors get hot enough to burn skin. A load resistor is rated at least twice its heat and "
        + "mounted on metal.";
    private const string Jumper =
        "Jumper: only a lead with an in-line fuse no larger than that of the circuit, never from the live side to "
        + "earth; take it off after the look.";
    private const string Lamp =
        "A lamp just lit burns: let it cool. On the battery make the last contact at the lamp, away from the battery's "
        + "gas.";
    private const string Gas = "Batteries give off explosive gas: ventilate, no sparks or flames.";
    private const string Law = "Road approval and local codes apply. If in doubt, ask a licensed or qualified person.";

    // The highest current range of most multimeters.
    private static readonly ElectricCurrent s_meterRange = ElectricCurrent.FromAmperes(10);

    /// <summary>For repairs and fitting, of a bike that is not known.</summary>
    public static ImmutableArray<string> OfAnyBike { get; } =
    [
        $"{WithoutCurrent}disconnect the battery, its earthed terminal first; without a battery stop the engine "
            + $"and unplug the lighting coil.",
        Fuse,
        Hot,
        Gas,
        Law,
    ];

    private static string WithoutCurrent => "Before repairs, fitting and ohm measurements: ";

    /// <summary>For repairs and fitting.</summary>
    public static ImmutableArray<string> OfWork(Bike bike) => [PowerOff(bike), .. Always(bike)];

    /// <summary>For ohm measurements.</summary>
    public static ImmutableArray<string> OfOhms(Bike bike) => [PowerOff(bike)];

    /// <summary>For repairs, and for measurements with the engine running.</summary>
    public static ImmutableArray<string> OfEngine(Bike bike) => [PowerOff(bike), Engine, .. Always(bike)];

    /// <summary>For the live part of a sheet of readings.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="isRunning">Whether its engine runs.</param>
    /// <param name="highest">The highest current that an ammeter may be expected to show; null where none is
    /// used.</param>
    public static ImmutableArray<string> OfReadings(Bike bike, bool isRunning, ElectricCurrent? highest) =>
        [
            Live,
            .. isRunning ? [Engine] : Array.Empty<string>(),
            .. highest is { } current ? [Ammeter(current), Above] : Array.Empty<string>(),
            .. Always(bike),
        ];

    /// <summary>For one test with an instrument.</summary>
    public static ImmutableArray<string> OfTest(
        Bike bike,
        Instrument instrument,
        bool isRunning,
        bool hasJumper,
        bool isLampOut
    ) =>
        [
            .. instrument == Instrument.Ohmmeter ? [PowerOff(bike)] : new[] { Live },
            .. isRunning && instrument != Instrument.Ohmmeter ? [Engine] : Array.Empty<string>(),
            .. instrument == Instrument.Ammeter ? [Ammeter(ElectricCurrent.Zero), Above] : Array.Empty<string>(),
            .. hasJumper ? [Jumper] : Array.Empty<string>(),
            .. isLampOut ? [Lamp] : Array.Empty<string>(),
        ];

    /// <summary>For the jumper tests of a sheet.</summary>
    public static ImmutableArray<string> OfJumpers { get; } =
    [
        Live,
        Jumper,
        "No jumper while a fuse is blown or a short is likely: find that first. Never across a fuse or a lamp.",
    ];

    /// <summary>What an ammeter's reading needs beside it: nothing, or that most meters do not reach it.</summary>
    public static string RangeOf(ElectricCurrent highest) =>
        highest > s_meterRange
            ? $"Up to {PlainFigures.Amperes(highest)} expected, above the {PlainFigures.Rating(s_meterRange)} range of "
                + "most meters: use a clamp meter or a shunt."
            : "";

    private static string Ammeter(ElectricCurrent highest) =>
        (
            "Ammeter in a fuse's place: only through an in-line fuse of the same rating, on a range above the expected "
            + $"current; afterwards put the leads back to volts. {RangeOf(highest)}"
        ).TrimEnd();

    // Without a harness nothing says which terminal is earthed.
    private static string PowerOff(Bike bike) =>
        WithoutCurrent
        + (
            bike.Lighting == LightingSupply.Direct
                ? "stop the engine and unplug the lighting coil."
                : $"disconnect the battery, its earthed terminal{Pole(bike)} first."
        );

    private static string Pole(Bike bike) =>
        !bike.HasNetwork ? ""
        : bike.Earth == Earth.Positive ? " (positive)"
        : " (negative)";

    private static string[] Always(Bike bike) =>
        bike.Lighting == LightingSupply.Direct
            ? [.. bike.Fuses.IsEmpty ? Array.Empty<string>() : [Fuse], Hot, Law]
            : [Fuse, Hot, Gas, Law];
}
