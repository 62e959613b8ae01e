using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Twenty things wrong with the 12-volt twin that the catalogue of faults lacks, and the listed parts at which
/// each is: who is sent there finds it.</summary>
internal static class UnlistedFaults
{
    public static IReadOnlyList<(string Name, Func<Bike, Bike> Altered, string[] Parts)> All { get; } =
    [
        ("a lamp between tail and stop feed", b => Load(b, "tail feed", "stop feed", 10), []),
        (
            "8 Ω from brake switch to parking lights",
            b => Wire(b, "brake out", "park line", 8),
            ["panel feed and stop feed"]
        ),
        ("15 Ω from left to right", b => Wire(b, "left line", "right line", 15), ["left feed and right feed"]),
        ("tail wire on the brake switch", b => Moved(b, "tail wire", from: "brake out"), ["tail wire"]),
        (
            "stop wire on the parking lights",
            b => Moved(b, "stop wire", from: "park line"),
            ["stop wire", "panel feed and stop feed"]
        ),
        ("left wire on the right lamps", b => Moved(b, "left wire", to: "right feed"), ["left wire"]),
        ("panel wire on the ignition", b => Moved(b, "panel wire", from: "ignition out"), ["panel wire"]),
        (
            "flasher on the parking lights",
            b => Moved(b, "flasher feed", from: "park line"),
            ["flasher feed", "flasher"]
        ),
        ("brake switch on the dipped beam", b => Moved(b, "brake feed", from: "low line"), ["brake feed"]),
        ("dipped beam on the main beam contact", b => Moved(b, "low beam wire", from: "high line"), ["low beam wire"]),
        (
            "parking contact closes in park only",
            b => Closed(b, "park line", "park"),
            ["lights (lights in to park line)"]
        ),
        (
            "parking contact closes in main only",
            b => Closed(b, "park line", "main"),
            ["lights (lights in to park line)"]
        ),
        (
            "main contact closes in park as well",
            b => Closed(b, "main beam line", "park", "main"),
            ["lights (lights in to main beam line)"]
        ),
        (
            "three poor joints",
            b => Joint(Joint(Joint(b, "rear earth", 2), "high beam wire", 1), "flasher feed", 3),
            ["rear earth", "high beam wire", "flasher feed"]
        ),
        (
            "three other poor joints",
            b => Joint(Joint(Joint(b, "frame strap", 0.4), "panel wire", 20), "brake feed", 2),
            ["frame strap", "panel wire", "brake feed"]
        ),
        (
            "both contacts of the light switch poor",
            b =>
                b with
                {
                    Switches =
                    [
                        .. b.Switches.Select(c =>
                            c.Switch == "lights" ? c with { Resistance = ElectricResistance.FromOhms(2) } : c
                        ),
                    ],
                },
            ["lights (lights in to park line)", "lights (lights in to main beam line)"]
        ),
        ("100 W more on the ignition", b => Load(b, "ignition out", "frame", 100), ["coil feed"]),
        (
            "rear earth open, 5 Ω to the stop wire",
            b => Joint(Wire(b, "rear return", "stop feed", 5), "rear earth", 100),
            ["rear earth"]
        ),
        (
            "panel earth on a poor headlamp earth",
            b => Joint(Moved(b, "panel earth", to: "headlamp return"), "headlamp earth", 4),
            ["headlamp earth", "panel earth"]
        ),
        (
            "a lamp in the tail wire",
            b => Load(Moved(b, "tail wire", from: "nowhere"), "park line", "nowhere", 10),
            ["tail wire"]
        ),
    ];

    private static Bike Wire(Bike bike, string from, string to, double ohms) =>
        bike with
        {
            Runs =
            [
                .. bike.Runs,
                bike.Runs[3] with
                {
                    Name = "extra wire",
                    From = from,
                    To = to,
                    Joints = 1,
                    JointResistance = ElectricResistance.FromOhms(ohms),
                },
            ],
        };

    private static Bike Load(Bike bike, string feed, string ret, double watts) =>
        bike with
        {
            Lamps =
            [
                .. bike.Lamps,
                new FittedLamp
                {
                    Circuit = "extra",
                    Lamp = "extra lamp",
                    Specification = Calc.LampSpecification.FromPower(
                        Calc.LampType.Filament,
                        ElectricPotential.FromVolts(12),
                        Power.FromWatts(watts),
                        null
                    ),
                    Feed = feed,
                    Return = ret,
                },
            ],
        };

    private static Bike Moved(Bike bike, string run, string? from = null, string? to = null) =>
        bike with
        {
            Runs = [.. bike.Runs.Select(r => r.Name == run ? r with { From = from ?? r.From, To = to ?? r.To } : r)],
        };

    private static Bike Joint(Bike bike, string run, double ohms) =>
        bike with
        {
            Runs =
            [
                .. bike.Runs.Select(r =>
                    r.Name == run ? r with { Joints = 1, JointResistance = ElectricResistance.FromOhms(ohms) } : r
                ),
            ],
        };

    private static Bike Closed(Bike bike, string to, params string[] positions) =>
        bike with
        {
            Switches = [.. bike.Switches.Select(c => c.To == to ? c with { ClosedIn = [.. positions] } : c)],
        };
}
