using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

/// <summary>Small harnesses of any shape: trees, loops, parallel runs, one or two fuses, either earth, every kind of
/// load.</summary>
internal static class RandomHarness
{
    private static readonly int[] s_gauges = [18, 16, 14, 12, 10, 8, 6, 4];

    public static Bike Make(Random random, int runs)
    {
        bool positive = random.Next(3) == 0;
        string live = positive ? Bike.BatteryMinus : Bike.BatteryPlus,
            earth = positive ? Bike.BatteryPlus : Bike.BatteryMinus;
        double volts = random.Next(2) == 0 ? 6 : 12;
        List<string> liveSide = ["fuse out"],
            earthSide = [earth];
        List<Fuse> fuses =
        [
            new Fuse
            {
                Name = "main",
                From = live,
                To = "fuse out",
                Rating = ElectricCurrent.FromAmperes(Pick(random, 5, 10, 15)),
                Style = random.Next(2) == 0 ? FuseStyle.Blade : FuseStyle.Glass,
                Resistance = ElectricResistance.FromMilliohms(random.Next(8)),
            },
        ];
        if (random.Next(3) == 0)
        {
            fuses.Add(
                fuses[0] with
                {
                    Name = "second",
                    To = "second out",
                    Rating = ElectricCurrent.FromAmperes(Pick(random, 5, 10, 15)),
                }
            );
            liveSide.Add("second out");
        }

        var made = new List<Run>();
        for (int i = 0; i < runs; i++)
        {
            bool feed = i == 0 || random.Next(2) == 0;
            List<string> side = feed ? liveSide : earthSide;
            string from = side[random.Next(side.Count)],
                to = $"{(feed ? "feed" : "frame")} {i}";
            // Now and then a second way between two known points: a parallel wire or a loop.
            if (
                i > 0
                && random.Next(4) == 0
                && side.Where(p => p != from && p is not ("second out" or "fuse out")).ToArray()
                    is { Length: > 0 } known
            )
                to = known[random.Next(known.Length)];
            else
                side.Add(to);
            bool turned = random.Next(2) == 0;
            made.Add(
                new Run
                {
                    Name = $"run {i}",
                    From = turned ? to : from,
                    To = turned ? from : to,
                    Wire = AmericanWireGauge.Solid(s_gauges[random.Next(s_gauges.Length)]),
                    Length = Length.FromMeters(random.Next(12) == 0 ? 0 : 0.3 + 0.2 * random.Next(30)),
                    Joints = random.Next(3),
                    JointResistance = ElectricResistance.FromMilliohms(random.Next(6)),
                    Bundle = 1 + random.Next(3),
                }
            );
        }

        var contacts = new List<SwitchContact>();
        for (int i = 0; i < 1 + random.Next(3); i++)
        {
            contacts.Add(
                new SwitchContact
                {
                    Switch = $"switch {i % 2}",
                    From = liveSide[random.Next(liveSide.Count)],
                    To = $"switched {i}",
                    ClosedIn = [random.Next(2) == 0 ? "one" : "two"],
                    Resistance = ElectricResistance.FromMilliohms(random.Next(12)),
                }
            );
            liveSide.Add($"switched {i}");
        }

        int lamps = 1 + random.Next(4);
        return new Bike
        {
            SystemVoltage = ElectricPotential.FromVolts(volts),
            BatteryVoltage = ElectricPotential.FromVolts(volts * 1.05),
            ChargingVoltage = ElectricPotential.FromVolts(volts * 1.15),
            BatteryResistance = ElectricResistance.FromMilliohms(random.Next(20)),
            WireTemperature = Temperature.FromDegreesCelsius(20 + random.Next(30)),
            Earth = positive ? Earth.Positive : Earth.Negative,
            AllowedDrop = Ratio.FromPercent(3 + random.Next(10)),
            Runs = [.. made],
            Fuses = [.. fuses],
            Switches = [.. contacts],
            Lamps = [.. Enumerable.Range(0, lamps).Select(i => Lamp(random, i, volts, liveSide, earthSide))],
        };
    }

    /// <summary>A feed ring of three wires with a lamp at two of its points, and two wires in parallel for the return;
    /// drop limits them.</summary>
    public static Bike Ring(Random random)
    {
        Run Wire(string from, string to) =>
            new()
            {
                Name = $"{from} to {to} {random.Next()}",
                From = from,
                To = to,
                Wire = AmericanWireGauge.Solid(12),
                Length = Length.FromMeters(4 + 8 * random.NextDouble()),
            };
        FittedLamp Lamp(int index, string feed) =>
            new()
            {
                Circuit = "test",
                Lamp = $"lamp {index}",
                Specification = LampSpecification.FromPower(
                    random.Next(3) == 0 ? LampType.Led : LampType.Filament,
                    ElectricPotential.FromVolts(12),
                    Power.FromWatts(20 + random.Next(60))
                ),
                Feed = feed,
                Return = "frame",
            };
        return new Bike
        {
            BatteryResistance = ElectricResistance.FromMilliohms(random.Next(6)),
            AllowedDrop = Ratio.FromPercent(3 + 4 * random.NextDouble()),
            Runs =
            [
                Wire(Bike.BatteryPlus, "left"),
                Wire(Bike.BatteryPlus, "right"),
                Wire("left", "right"),
                Wire("frame", Bike.BatteryMinus),
                Wire("frame", Bike.BatteryMinus),
            ],
            Lamps = [Lamp(0, "left"), Lamp(1, "right")],
        };
    }

    private static FittedLamp Lamp(
        Random random,
        int index,
        double volts,
        List<string> liveSide,
        List<string> earthSide
    )
    {
        LampType type = Pick(
            random,
            LampType.Filament,
            LampType.Filament,
            LampType.Halogen,
            LampType.Led,
            LampType.LedResistor,
            LampType.Fixed,
            LampType.Resistor
        );
        // The last points of a side are farthest out.
        string feed = liveSide[^(1 + random.Next(Math.Min(3, liveSide.Count)))];
        bool acrossTheFeed = index > 0 && random.Next(8) == 0;
        string back = acrossTheFeed
            ? liveSide[random.Next(liveSide.Count)]
            : earthSide[^(1 + random.Next(Math.Min(2, earthSide.Count)))];
        if (feed == back)
            back = earthSide[^1];
        return new FittedLamp
        {
            Circuit = "test",
            Lamp = $"lamp {index}",
            Specification = LampSpecification.FromPower(
                type,
                ElectricPotential.FromVolts(volts),
                Power.FromWatts(acrossTheFeed ? 2 : 8 + random.Next(50))
            ),
            Quantity = 1 + (random.Next(5) == 0 ? 1 : 0),
            Feed = feed,
            Return = back,
        };
    }

    private static T Pick<T>(Random random, params ImmutableArray<T> items) => items[random.Next(items.Length)];
}
