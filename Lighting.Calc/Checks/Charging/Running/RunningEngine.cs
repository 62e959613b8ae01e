using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike with its engine running: generator, regulator, battery and harness at one operating point for each
/// engine speed and setting.</summary>
/// <remarks>
/// The voltage of the bus, where the generator joins the harness (the battery's terminals, unless the bike names a
/// point: <see cref="Bike.GeneratorPoint"/>), is the one at which the currents balance (Kirchhoff): what the generator
/// gives (<see cref="BusState.GeneratorCurrent"/>) is what harness, battery, regulator and field take. The lamps'
/// current passes through the battery's resistance only as far as the battery supplies it. Of several such
/// voltages, which LED drivers may allow, it is the highest: the lit one. For one thread at a time.
/// </remarks>
internal sealed class RunningEngine
{
    // To the bus's voltage with the battery at rest; each round settles all but the loads' share of the drop.
    private const int MostRounds = 20;

    private readonly HarnessSolver _solver;
    private readonly OutputModel _output;
    private readonly BatteryAndRegulator _bus;
    private readonly double _fieldAmperes;
    private readonly Dictionary<long, GeneratorOutput?> _best = [];
    private readonly Dictionary<long, GeneratorOutput?> _slowest = [];

    /// <param name="bike">The bike with the values that the solver was given.</param>
    /// <param name="solver">Its harness.</param>
    /// <param name="options">What the lists do not say.</param>
    internal RunningEngine(Bike bike, HarnessSolver solver, ChargingOptions options)
    {
        options.Check();
        _solver = solver;
        _output = OutputModel.Of(bike, options);
        _bus = BatteryAndRegulator.Of(bike, options);
        _fieldAmperes = options.FieldCurrent.Amperes;
        if (solver.Network.IsApart)
            solver.SetBattery(_bus.BatteryOn(1));
    }

    /// <summary>Voltage that the regulator holds: that of a Zener diode, else the charging voltage.</summary>
    public ElectricPotential RegulatedVoltage => ElectricPotential.FromVolts(_bus.HoldVolts);

    private bool IsApart => _solver.Network.IsApart;

    /// <summary>Open-circuit voltage of the battery at its state of charge.</summary>
    public ElectricPotential BatteryVoltage => ElectricPotential.FromVolts(_bus.OpenVolts);

    /// <summary>What keeps surplus out of a full battery.</summary>
    internal RegulatorKind Regulator => _bus.Kind;

    /// <summary>The output of the charging system.</summary>
    internal OutputModel Output => _output;

    /// <summary>Describes a bike with its engine running.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">What the lists do not say; null for the defaults.</param>
    public static RunningEngine Of(Bike bike, ChargingOptions? options = null) =>
        new(bike, new HarnessNetwork(bike).AtGenerator.CreateSolver(), options ?? ChargingOptions.Default);

    /// <summary>The operating point at an engine speed.</summary>
    /// <returns>The solved harness, its <see cref="OperatingPoint.Bus"/> with the currents; null where the charging
    /// list does not state the output at that speed.</returns>
    public OperatingPoint? At(RotationalSpeed speed, Setting setting)
    {
        if (!(speed.RevolutionsPerMinute > 0))
            throw new ArgumentOutOfRangeException(nameof(speed), speed, "Speed must be greater than zero.");
        ContactSet carrying = _solver.CarryingIn(setting);
        return _output.GeneratorAt(speed.RevolutionsPerMinute, setting) is { } generator
            ? Solve(setting, carrying, generator, Held(setting, carrying))
            : null;
    }

    /// <summary>The harness at the voltage that the regulator holds.</summary>
    internal SolvedCircuit Held(Setting setting, ContactSet carrying)
    {
        _solver.SetBatteryResistance(ElectricResistance.Zero);
        _solver.SetSupply(RegulatedVoltage);
        return _solver.Solve(setting, carrying);
    }

    /// <summary>The speed from which the battery no longer discharges: the output covers loads and field at the
    /// battery's open-circuit voltage.</summary>
    public BreakEven ChargesFrom(Setting setting)
    {
        _solver.SetBatteryResistance(ElectricResistance.Zero);
        _solver.SetSupply(BatteryVoltage);
        SolvedCircuit solved = _solver.Solve(setting).Solved;
        // A battery that neither charges nor discharges has its open-circuit voltage at its terminals, to which the bus
        // drops on the way.
        for (int round = 0; IsApart && round < MostRounds; round++)
        {
            if (Math.Abs(solved.BatteryVolts - _bus.OpenVolts) <= 1e-9)
                break;
            _solver.SetSupply(ElectricPotential.FromVolts(solved.SupplyVolts + _bus.OpenVolts - solved.BatteryVolts));
            solved = _solver.Solve(setting).Solved;
        }

        return _output.BreakEvenAt(
            solved.SourceAmperes + solved.BatteryAmperes + _fieldAmperes,
            setting,
            solved.SupplyVolts
        );
    }

    /// <summary>The operating point at the speed of the charging list at which the most is given.</summary>
    internal OperatingPoint AtMostOutput(Setting setting)
    {
        ContactSet carrying = _solver.CarryingIn(setting);
        return AtMostOutput(setting, carrying, Held(setting, carrying));
    }

    /// <summary>The same of a setting whose contacts and solution at the held voltage are known.</summary>
    /// <returns>The operating point; at the held voltage without a <see cref="OperatingPoint.Bus"/> where no output is
    /// known.</returns>
    internal OperatingPoint AtMostOutput(Setting setting, ContactSet carrying, SolvedCircuit held) =>
        MostOutput(setting) is { } generator
            ? Solve(setting, carrying, generator, held)
            : new OperatingPoint(held, setting);

    /// <summary>The operating point at the slowest speed of the charging list; null where none is known or none is
    /// steady.</summary>
    internal OperatingPoint? AtSlowest(Setting setting)
    {
        ContactSet carrying = _solver.CarryingIn(setting);
        try
        {
            return SlowestOutput(setting) is { } generator
                ? Solve(setting, carrying, generator, Held(setting, carrying))
                : null;
        }
        catch (NetworkNotSolvedException)
        {
            return null;
        }
    }

    /// <summary>The largest output of the charging list in a setting; null where none is known.</summary>
    internal GeneratorOutput? MostOutput(Setting setting) => Known(setting, _best, _output.MostRpm);

    /// <summary>The output at the slowest speed of the charging list in a setting, at which loads of constant power
    /// draw most; null where none is known.</summary>
    internal GeneratorOutput? SlowestOutput(Setting setting) => Known(setting, _slowest, _output.SlowestRpm);

    private GeneratorOutput? Known(
        Setting setting,
        Dictionary<long, GeneratorOutput?> known,
        Func<Setting, double?> rpmIn
    )
    {
        if (_output.Curves.IsEmpty)
            return null;
        long windings = _output.WindingsIn(setting);
        if (!known.TryGetValue(windings, out GeneratorOutput? output))
            known[windings] = output = rpmIn(setting) is { } rpm ? _output.GeneratorAt(rpm, setting) : null;
        return output;
    }

    /// <summary>The operating point with a generator's output.</summary>
    internal OperatingPoint Solve(Setting setting, ContactSet carrying, GeneratorOutput generator, SolvedCircuit held)
    {
        if (IsApart)
            return SolveApart(setting, carrying, generator, held);
        double surplus = generator.AmperesAt(_bus.HoldVolts) - _fieldAmperes - held.SourceAmperes;
        if (_bus.Holds(surplus))
            return Point(held, setting, generator);
        _solver.Close(setting, carrying, held.WireOhms);
        return BusBalance.Settle(
            _bus,
            generator,
            _fieldAmperes,
            held.SourceAmperes,
            (emf, ohms) => _solver.Behind(setting, emf, ohms),
            out double volts
        )
            ? Point(_solver.TakeBus(), setting, generator)
            : throw NotSteady(setting, generator, volts);
    }

    private OperatingPoint SolveApart(
        Setting setting,
        ContactSet carrying,
        GeneratorOutput generator,
        SolvedCircuit held
    )
    {
        _solver.Close(setting, carrying, held.WireOhms);
        return JointBalance.Settle(
            _bus,
            generator,
            _fieldAmperes,
            _solver.HasDrivers,
            (volts, battery) => _solver.At(setting, volts, battery),
            out double bus
        )
            ? PointApart(_solver.TakeBus(), setting, generator)
            : throw NotSteady(setting, generator, bus);
    }

    private static NetworkNotSolvedException NotSteady(Setting setting, GeneratorOutput generator, double volts) =>
        new(
            string.Create(
                CultureInfo.InvariantCulture,
                $"In the setting '{setting}' the voltage has no steady value at {generator.Rpm:0} rpm: "
                    + $"at {volts:0.00} V loads drop out and come on again."
            ),
            setting,
            isDeadShort: false
        );

    private OperatingPoint PointApart(SolvedCircuit solved, Setting setting, GeneratorOutput generator)
    {
        double volts = solved.SupplyVolts,
            available = generator.AmperesAt(volts),
            taken = solved.SourceAmperes + solved.BatteryAmperes + _fieldAmperes,
            battery = solved.BatteryAmperes,
            regulator;
        // At the battery's terminals the harness has carried the regulator's current as well.
        if (_bus.IsAtBattery)
            (battery, regulator, _) = _bus.IsSeries ? (battery, 0, 0) : _bus.Split(battery);
        else
            taken += regulator = _bus.Take(available - taken, volts).Regulator;
        return new OperatingPoint(
            solved,
            setting,
            State(generator, available, taken, battery, regulator, volts, solved.BatteryVolts)
        );
    }

    private BusState State(
        GeneratorOutput generator,
        double available,
        double given,
        double battery,
        double regulator,
        double volts,
        double batteryVolts
    ) =>
        new()
        {
            Speed = RotationalSpeed.FromRevolutionsPerMinute(generator.Rpm),
            Voltage = ElectricPotential.FromVolts(volts),
            BatteryVoltage = ElectricPotential.FromVolts(batteryVolts),
            RegulatorVoltage = ElectricPotential.FromVolts(_bus.IsAtBattery ? batteryVolts : volts),
            AvailableCurrent = ElectricCurrent.FromAmperes(available),
            GeneratorCurrent = ElectricCurrent.FromAmperes(given),
            BatteryCurrent = ElectricCurrent.FromAmperes(battery),
            RegulatorCurrent = ElectricCurrent.FromAmperes(regulator),
            FieldCurrent = ElectricCurrent.FromAmperes(_fieldAmperes),
            BatteryDrop = ElectricPotential.FromVolts(battery < 0 ? -battery * _bus.BatteryOhms : 0),
        };

    private OperatingPoint Point(SolvedCircuit solved, Setting setting, GeneratorOutput generator)
    {
        double volts = solved.SupplyVolts,
            available = generator.AmperesAt(volts),
            surplus = available - _fieldAmperes - solved.SourceAmperes;
        (double battery, double regulator, double withheld) = _bus.Split(surplus);
        // A search ends within its accuracy: above its open-circuit voltage no battery discharges.
        if (volts > _bus.OpenVolts)
            battery = Math.Max(0, battery);

        return new OperatingPoint(
            solved,
            setting,
            State(generator, available, available - withheld, battery, regulator, volts, volts)
        );
    }
}
