using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Makes bikes of random figures and awkward names, all of them legal.</summary>
internal sealed class RandomLists(int seed)
{
    private static readonly string[] s_awkward =
    [
        "a,b",
        "\"quoted\"",
        "=SUM(A1)",
        "+44",
        "-x",
        "@home",
        "'apostrophe",
        "'=both",
        "''-two",
        "semi;colon",
        "tab, and 'more'",
        "côté",
        "灯",
        "🏍",
        "ends with \"",
        "#5",
        "1.5",
        "-3",
        "sep=;",
    ];

    private readonly Random _random = new(seed);

    public BikeLists Make()
    {
        ImmutableArray<string> points = [.. Names("point", 4), Bike.BatteryPlus, Bike.BatteryMinus];
        bool network = _random.Next(2) == 0;
        ImmutableArray<SwitchContact> contacts = [.. Enumerable.Range(0, 4).Select(i => Contact(i, points))];
        Bike bike = Bike.ForSystem(ElectricPotential.FromVolts(_random.Next(2) == 0 ? 6 : 12)) with
        {
            Name = Awkward("bike"),
            BatteryCapacity = _random.Next(2) == 0 ? null : ElectricCharge.FromAmpereHours(Number(1, 20)),
            BatteryResistance = ElectricResistance.FromOhms(Number(0.001, 0.1)),
            WireTemperature = Temperature.FromDegreesCelsius(Number(-20, 60)),
            Earth = (Earth)_random.Next(2),
            Flasher = (FlasherKind)_random.Next(4),
            FlasherLoad = _random.Next(2) == 0 ? null : Power.FromWatts(Number(5, 60)),
            AllowedDrop = Ratio.FromPercent(Number(1, 10)),
            Switches = contacts,
        };
        bike = bike with
        {
            Lamps = [.. Names("lamp", 5).Select(n => Lamp(n, points, network, contacts))],
            Runs = network ? [.. Names("run", 3).Select(n => Wire(n, points))] : [],
            Fuses = [.. Names("fuse", network ? 3 : 1).Select(n => Fuse(n, points, network))],
            Charging =
            [
                .. Enumerable
                    .Range(0, 3)
                    .Select(i => new ChargingPoint(
                        RotationalSpeed.FromRevolutionsPerMinute(1000 * i + Number(1, 900)),
                        ElectricCurrent.FromAmperes(Number(1, 15)),
                        Held(contacts)
                    )),
            ],
            Ride =
            [
                .. Enumerable
                    .Range(0, 2)
                    .Select(_ => new RideStretch(
                        Awkward("stretch"),
                        RotationalSpeed.FromRevolutionsPerMinute(Number(500, 8000)),
                        Duration.FromMinutes(Number(1, 90)),
                        Held(contacts)
                    )),
            ],
        };
        return new BikeLists
        {
            Bike = bike,
            Swaps = [.. bike.Lamps.Take(2).Select(l => new LampReplacement(l.Lamp, Specification()))],
            Readings = [.. Readings(bike, contacts)],
            Prices = [.. Names("item", 3).Select(n => new ItemPrice(n, (decimal)Math.Round(Number(0, 20), 2)))],
        };
    }

    private IEnumerable<Reading> Readings(Bike bike, ImmutableArray<SwitchContact> contacts)
    {
        yield return new Reading
        {
            When = Held(contacts),
            Point = Bike.BatteryPlus,
            Instrument = Instrument.Meter,
            Voltage = ElectricPotential.FromVolts(Number(-13, 13)),
        };
        yield return new Reading
        {
            When = Held(contacts),
            Point = Bike.BatteryPlus,
            Instrument = Instrument.TestLamp,
            Seen = (Brightness)_random.Next(4),
        };
        yield return new Reading
        {
            When = Held(contacts),
            Point = bike.Fuses[0].Name,
            Instrument = Instrument.Ammeter,
            Current = ElectricCurrent.FromAmperes(Number(-10, 10)),
        };
        yield return new Reading
        {
            When = Held(contacts),
            Point = bike.Lamps[0].Lamp,
            Instrument = Instrument.Ohmmeter,
            Resistance = ElectricResistance.FromOhms(Number(0, 100)),
        };
        yield return new Reading
        {
            When = Held(contacts),
            Point = bike.Lamps[1].Lamp,
            Instrument = Instrument.Ohmmeter,
            IsOpen = true,
        };
        yield return new Reading
        {
            When = Held(contacts),
            Point = bike.Lamps[1].Lamp,
            Instrument = Instrument.Visual,
            Seen = (Brightness)_random.Next(4),
        };
    }

    private FittedLamp Lamp(
        string name,
        ImmutableArray<string> points,
        bool network,
        ImmutableArray<SwitchContact> contacts
    )
    {
        (string? feed, string? back) = network ? Two(points) : (null, null);
        return new FittedLamp
        {
            Circuit = Awkward("circuit"),
            Lamp = name,
            Specification = Specification(),
            Quantity = _random.Next(1, 9),
            LitWhen = Held(contacts),
            Duty = Ratio.FromDecimalFractions(_random.NextDouble()),
            Feed = feed,
            Return = back,
            Notes = Remark(),
        };
    }

    private LampSpecification Specification()
    {
        if (_random.Next(6) == 0)
            return LedClassTable.TryFind(
                LedClassTable.Codes[_random.Next(LedClassTable.Codes.Length)],
                out LampSpecification? led
            )
                ? led!
                : throw new InvalidOperationException();
        var type = (LampType)_random.Next(6);
        var volts = ElectricPotential.FromVolts(Number(6, 14));
        return _random.Next(3) == 0
            ? LampSpecification.FromPower(type, volts, Power.FromWatts(Number(1, 60)), volts * Number(0.2, 0.8))
            : LampSpecification.FromCurrent(type, volts, ElectricCurrent.FromAmperes(Number(0.01, 5)));
    }

    private Run Wire(string name, ImmutableArray<string> points)
    {
        (string from, string to) = Two(points);
        return new Run
        {
            Name = name,
            From = from,
            To = to,
            Wire = WireTable.All[_random.Next(WireTable.All.Length)],
            Length = Length.FromMeters(Number(0.01, 3)),
            Joints = _random.Next(5),
            JointResistance = ElectricResistance.FromOhms(Number(0.0001, 0.01)),
            Bundle = _random.Next(1, 7),
            Colour = _random.Next(3) == 0 ? null : WireColour.All[_random.Next(WireColour.All.Length)],
            Notes = Remark(),
            FromEnd = _random.Next(2) == 0 ? null : Awkward("end"),
            ToEnd = _random.Next(2) == 0 ? null : Awkward("end"),
        };
    }

    private Fuse Fuse(string name, ImmutableArray<string> points, bool network)
    {
        (string? from, string? to) = network ? Two(points) : (null, null);
        return new Fuse
        {
            Name = name,
            From = from,
            To = to,
            Rating = ElectricCurrent.FromAmperes(Number(1, 40)),
            Style = (FuseStyle)_random.Next(2),
            Resistance = _random.Next(2) == 0 ? null : ElectricResistance.FromOhms(Number(0.001, 0.1)),
            Notes = Remark(),
        };
    }

    private SwitchContact Contact(int index, ImmutableArray<string> points)
    {
        (string from, string to) = Two(points);
        return new SwitchContact
        {
            Switch = index < 2 ? "+lights" : $"'switch {index}",
            From = from,
            To = $"{to} {index}",
            ClosedIn = index % 2 == 0 ? ["low"] : ["+low, dim", "high"],
            Resistance = ElectricResistance.FromOhms(Number(0.001, 0.1)),
        };
    }

    private Condition Held(ImmutableArray<SwitchContact> contacts)
    {
        if (_random.Next(3) == 0)
            return Condition.Always;
        SwitchContact first = contacts[_random.Next(2)],
            second = contacts[_random.Next(2, 4)];
        return Condition.Parse(
            $"{first.Switch.ToUpperInvariant()}={first.ClosedIn[0]}; {second.Switch}={second.ClosedIn[^1]}"
        );
    }

    private (string From, string To) Two(ImmutableArray<string> points)
    {
        int from = _random.Next(points.Length);
        return (points[from], points[(from + 1 + _random.Next(points.Length - 1)) % points.Length]);
    }

    private IEnumerable<string> Names(string kind, int count) =>
        Enumerable.Range(0, count).Select(i => $"{Awkward(kind)} {i}");

    private string? Remark() => _random.Next(3) == 0 ? Awkward("remark") : null;

    private string Awkward(string plain) => _random.Next(3) == 0 ? plain : s_awkward[_random.Next(s_awkward.Length)];

    private double Number(double low, double high) => low + _random.NextDouble() * (high - low);
}
