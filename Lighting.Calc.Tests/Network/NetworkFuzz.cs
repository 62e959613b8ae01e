using UnitsNet;

namespace Lighting.Calc.Tests.Network;

/// <summary>How far the values of a random network lie from those of a bike.</summary>
public enum FuzzKind
{
    /// <summary>Ohms of harnesses.</summary>
    Plain,

    /// <summary>Ten microohms to ten kilohms.</summary>
    Middle,

    /// <summary>Nanoohms to gigaohms, microwatts to megawatts.</summary>
    Extreme,
}

/// <summary>A random network: runs, lamps of every kind, fuses and switches between random points, the same from the
/// same seed.</summary>
internal sealed class NetworkFuzz
{
    private readonly Random _random;
    private readonly FuzzKind _kind;
    private readonly int _points;
    private readonly double _system;
    private readonly double _supply;
    private readonly double _battery;
    private readonly Earth _earth;
    private readonly (Run Run, double Wire, double Joints)[] _runs;
    private readonly FittedLamp[] _lamps;
    private readonly Fuse[] _fuses;
    private readonly SwitchContact[] _contacts;
    private readonly Setting _setting;

    public NetworkFuzz(int seed, FuzzKind kind)
    {
        _random = new Random(seed);
        _kind = kind;
        _points = _random.Next(2, _random.Next(10) == 0 ? 60 : 12);
        int runs = _random.Next(1, _points * 2),
            lamps = _random.Next(1, _points * 2),
            fuses = _random.Next(0, 4),
            contacts = _random.Next(0, 5);
        _system = _random.Next(2) == 0 ? 6 : 12;
        _supply =
            kind != FuzzKind.Extreme
                ? _system
                : _random.Next(6) switch
                {
                    0 => 0,
                    1 => Between(1e-6, 1e6),
                    _ => _system,
                };
        WireSize wire = WireTable.All[0];
        _runs =
        [
            .. Enumerable
                .Range(0, runs)
                .Select(i =>
                    (
                        new Run
                        {
                            Name = "r" + i,
                            From = Point(),
                            To = Point(),
                            Wire = wire,
                            Length = Length.FromMeters(1),
                        },
                        Ohms(),
                        _random.Next(3) == 0 ? Ohms() : 0
                    )
                ),
        ];
        _lamps =
        [
            .. Enumerable
                .Range(0, lamps)
                .Select(i => new FittedLamp
                {
                    Circuit = "c",
                    Lamp = "l" + i,
                    Specification = Lamp(),
                    Quantity = _random.Next(4) == 0 ? _random.Next(1, 20) : 1,
                    Feed = Point(),
                    Return = Point(),
                }),
        ];
        _fuses =
        [
            .. Enumerable
                .Range(0, fuses)
                .Select(i => new Fuse
                {
                    Name = "f" + i,
                    From = Point(),
                    To = Point(),
                    Rating = ElectricCurrent.FromAmperes(15),
                    Resistance = _random.Next(3) == 0 ? null : ElectricResistance.FromOhms(Ohms()),
                }),
        ];
        _contacts =
        [
            .. Enumerable
                .Range(0, contacts)
                .Select(i => new SwitchContact
                {
                    Switch = "s" + i,
                    From = Point(),
                    To = Point(),
                    ClosedIn = ["on"],
                    Resistance = ElectricResistance.FromOhms(Ohms()),
                }),
        ];
        _battery = _random.Next(3) == 0 ? 0 : Ohms();
        _setting = new Setting(
            _contacts.Select(s => new SwitchPosition(s.Switch, _random.Next(3) == 0 ? "off" : "on"))
        );
        _earth = (Earth)_random.Next(2);
    }

    /// <summary>Solves it with its parts in one order or in the other; null, with the reason, where no operating point
    /// is found.</summary>
    public OperatingPoint? Solve(bool reversed, out string outcome)
    {
        (Run Run, double Wire, double Joints)[] runs = Ordered(_runs);
        Bike bike = Bike.ForSystem(ElectricPotential.FromVolts(_system)) with
        {
            Earth = _earth,
            BatteryResistance = ElectricResistance.FromOhms(_battery),
            Runs = [.. runs.Select(r => r.Run)],
            Lamps = [.. Ordered(_lamps)],
            Fuses = [.. Ordered(_fuses)],
            Switches = [.. Ordered(_contacts)],
        };
        try
        {
            HarnessSolver solver = HarnessNetwork.OfAnyValues(bike).CreateSolver();
            solver.SetSupply(ElectricPotential.FromVolts(_supply));
            for (int i = 0; i < runs.Length; i++)
                solver.SetRun(
                    i,
                    ElectricResistance.FromOhms(runs[i].Wire),
                    ElectricResistance.FromOhms(runs[i].Joints)
                );
            outcome = "solved";
            return solver.Solve(_setting);
        }
        catch (NetworkNotSolvedException wrong)
        {
            outcome = wrong.IsDeadShort ? "dead short" : wrong.Message;
            return null;
        }

        T[] Ordered<T>(T[] parts) => reversed ? [.. parts.Reverse()] : parts;
    }

    /// <summary>What two solutions of one network, its parts in either order, say against each other or against the
    /// laws of circuits; empty where nothing is.</summary>
    public string Problem()
    {
        OperatingPoint? one = Solve(false, out string first),
            other = Solve(true, out string second);
        if (one is null != other is null || (one is null && first == "dead short" != (second == "dead short")))
            return $"the order decides: {first} / {second}";
        if (one is null)
            return first == "dead short" ? "" : first;
        Dictionary<string, double> volts = one.Points.ToDictionary(p => p.Point, p => p.Voltage.Volts);
        double scale = Math.Max(1e-9, _supply);
        foreach (NodeVoltage point in other!.Points)
            if (
                !double.IsFinite(point.Voltage.Volts)
                || Math.Abs(point.Voltage.Volts - volts[point.Point]) > 1e-3 * scale
            )
                return FormattableString.Invariant(
                    $"{point.Point} has {volts[point.Point]:G6} V and {point.Voltage.Volts:G6} V of {_supply:G6} V"
                );
        double source = one.TotalCurrent.Amperes,
            lost = source * one.BatteryDrop.Volts,
            given = source * _supply;
        lost += one.Runs.Sum(r => r.Current.Amperes * (r.WireDrop.Volts + r.JointDrop.Volts));
        lost +=
            one.Contacts.Sum(c => c.Current.Amperes * c.Drop.Volts)
            + one.Fuses.Sum(f => f.Current.Amperes * f.Drop.Volts);
        lost += one.Lamps.Sum(l => (double)l.Power.Watts);
        return Math.Abs(lost - given) > 1e-6 * Math.Max(1e-3, given)
            ? FormattableString.Invariant($"{given:G6} W in, {lost:G6} W out")
            : "";
    }

    private double Between(double lowest, double highest) =>
        Math.Pow(10, Math.Log10(lowest) + _random.NextDouble() * (Math.Log10(highest) - Math.Log10(lowest)));

    private double Ohms() =>
        _kind switch
        {
            FuzzKind.Extreme => _random.Next(12) switch
            {
                0 => 0,
                1 => 1e-9,
                2 => 1e9,
                _ => Between(1e-9, 1e9),
            },
            FuzzKind.Middle => _random.Next(12) switch
            {
                0 => 0,
                1 => 1e5,
                _ => Between(1e-5, 1e4),
            },
            _ => _random.Next(15) == 0 ? 0 : Between(1e-4, 1),
        };

    private string Point() =>
        _random.Next(_points) switch
        {
            0 => Bike.BatteryMinus,
            1 => Bike.BatteryPlus,
            var number => "p" + number,
        };

    private LampSpecification Lamp()
    {
        bool isExtreme = _kind == FuzzKind.Extreme;
        var type = (LampType)_random.Next(6);
        double volts = isExtreme && _random.Next(4) == 0 ? Between(0.01, 1e4) : _system;
        double watts =
            isExtreme ? (_random.Next(3) == 0 ? Between(1e-6, 1e6) : Between(0.1, 100))
            : _kind == FuzzKind.Middle ? Between(1e-2, 1e3)
            : Between(1, 60);
        ElectricPotential? minimum =
            _random.Next(2) == 0 ? null : ElectricPotential.FromVolts(volts * (0.01 + 0.98 * _random.NextDouble()));
        return LampSpecification.FromPower(type, ElectricPotential.FromVolts(volts), Power.FromWatts(watts), minimum);
    }
}
