using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike whose parts have spreads: which parts, and the bike that one set of their values makes.</summary>
/// <remarks>A part that is listed with nothing (no joints, no resistance) has no spread: a multiple of nothing is
/// nothing.</remarks>
internal sealed class UncertainBike
{
    private const int None = -1;

    private readonly ImmutableArray<TableRow> _rows = [.. PublishedTable.Load("tolerances").Read()];
    private readonly Dictionary<(TableRow Row, Ratio? Own), PartSpread> _spreads = [];
    private readonly ImmutableArray<TolerancePart>.Builder _parts = ImmutableArray.CreateBuilder<TolerancePart>();
    private readonly Bike _bike;
    private readonly double _scale;
    private readonly ElectricPotential? _supplyVoltage;
    private readonly int[] _lamp;
    private readonly int[] _wire;
    private readonly int[] _joint;
    private readonly int[] _contact;
    private readonly int[] _fuse;
    private readonly int _temperature;
    private readonly int _batteryResistance;
    private readonly int _battery;
    private readonly int _regulator;
    private readonly int _stator;

    /// <param name="bike">The bike as listed.</param>
    /// <param name="supply">Supply voltage, measured and without a spread; null for the regulator's with the engine
    /// running, the battery's with the engine off.</param>
    /// <param name="engine">Whether the engine runs.</param>
    /// <param name="scale">1 leaves the spreads, 0 removes them.</param>
    public UncertainBike(Bike bike, ElectricPotential? supply, EngineState engine, double scale)
    {
        _bike = bike;
        _scale = scale;
        _supplyVoltage = supply;
        Engine = engine;
        _lamp = [.. bike.Lamps.Select(AddLamp)];
        var sizes = new Dictionary<WireSize, int>();
        _wire = [.. bike.Runs.Select(r => r.Length.Meters > 0 ? AddWire(r.Wire, sizes) : None)];
        _temperature = _wire.Any(w => w != None)
            ? Add(PartKind.WireTemperature, "wire temperature", "wire temperature")
            : None;
        _joint =
        [
            .. bike.Runs.Select(r =>
                r.TotalJointResistance.Ohms > 0 ? Add(PartKind.Joint, $"joints of '{r.Name}'", "joint") : None
            ),
        ];
        _contact =
        [
            .. bike.Switches.Select(s =>
                s.Resistance.Ohms > 0 ? Add(PartKind.Contact, $"contact '{s.Name}'", "contact") : None
            ),
        ];
        _fuse =
        [
            .. bike.Fuses.Select(f =>
                bike.HasNetwork && FuseTable.ResistanceOf(f).Ohms > 0
                    ? Add(PartKind.Fuse, $"fuse '{f.Name}'", "fuse")
                    : None
            ),
        ];
        _batteryResistance =
            bike.BatteryResistance.Ohms > 0
                ? Add(PartKind.BatteryResistance, "battery resistance", "battery resistance")
                : None;
        _battery = Add(PartKind.BatteryVolts, "battery volts", "battery volts");
        _regulator =
            IsBalanced || !bike.Charging.IsEmpty
                ? Add(PartKind.RegulatorVolts, "regulator volts", "regulator volts")
                : None;
        _stator = bike.Charging.IsEmpty ? None : Add(PartKind.StatorOutput, "stator output", "stator output");

        Parts = _parts.ToImmutable();
        CheckTemperature();
    }

    /// <summary>Every part with a spread; a set of values has one for each, a factor or kelvins added.</summary>
    public ImmutableArray<TolerancePart> Parts { get; }

    /// <summary>The values that leave everything as listed.</summary>
    public double[] Listed() => [.. Parts.Select(p => p.Spread.Listed)];

    /// <summary>The bike that a set of values makes, for every check of the library.</summary>
    public Bike With(double[] values) =>
        _bike.WithWiresAt(
            Temperature.FromDegreesCelsius(
                _bike.WireTemperature.DegreesCelsius + (_temperature == None ? 0 : values[_temperature])
            )
        ) with
        {
            Lamps =
            [
                .. _bike.Lamps.Select(
                    (l, i) => l with { Specification = Scaled(l.Specification, Factor(values, _lamp[i])) }
                ),
            ],
            Runs =
            [
                .. _bike.Runs.Select(
                    (r, i) =>
                        r with
                        {
                            Wire = new WireSize(
                                r.Wire.Name,
                                r.Wire.Construction,
                                r.Wire.CopperArea,
                                r.Wire.OhmsPerMetreAt20 * Factor(values, _wire[i])
                            ),
                            JointResistance = r.JointResistance * Factor(values, _joint[i]),
                        }
                ),
            ],
            Switches =
            [
                .. _bike.Switches.Select((s, i) => s with { Resistance = s.Resistance * Factor(values, _contact[i]) }),
            ],
            Fuses =
            [
                .. _bike.Fuses.Select(
                    (f, i) => f with { Resistance = FuseTable.ResistanceOf(f) * Factor(values, _fuse[i]) }
                ),
            ],
            Charging = [.. _bike.Charging.Select(c => c with { Current = c.Current * Factor(values, _stator) })],
            BatteryResistance = _bike.BatteryResistance * Factor(values, _batteryResistance),
            BatteryVoltage = _bike.BatteryVoltage * BatteryFactor(values),
            ChargingVoltage = _bike.ChargingVoltage * Factor(values, _regulator),
            ZenerVoltage = _bike.ZenerVoltage is { } zener ? zener * Factor(values, _regulator) : null,
        };

    /// <summary>Factor on the open-circuit voltage of the battery.</summary>
    public double BatteryFactor(double[] values) => Factor(values, _battery);

    /// <summary>Whether the engine runs.</summary>
    public EngineState Engine { get; }

    /// <summary>Whether generator, regulator and battery find the voltage.</summary>
    public bool IsBalanced => Engine == EngineState.Running && _supplyVoltage is null;

    /// <summary>What a sampled bike is checked with.</summary>
    public CheckOptions CheckOptions(ToleranceOptions options) =>
        options.Check with
        {
            Supply = _supplyVoltage,
            Engine = Engine,
        };

    private static double Factor(double[] values, int part) => part == None ? 1 : values[part];

    private static LampSpecification Scaled(LampSpecification lamp, double factor) =>
        LampSpecification.FromCurrent(
            lamp.Type,
            lamp.ReferenceVoltage,
            lamp.ReferenceCurrent * factor,
            lamp.MinimumVoltage
        ) with
        {
            Code = lamp.Code,
            ReferenceFlux = lamp.ReferenceFlux,
            MaximumVoltage = lamp.MaximumVoltage,
        };

    private int AddLamp(FittedLamp lamp)
    {
        LampSpecification specification = lamp.Specification;
        string kind = specification.Type switch
        {
            LampType.Led => "led",
            LampType.LedResistor => "led resistor",
            LampType.Fixed => "fixed",
            LampType.Resistor => "resistor",
            _ => "filament",
        };
        PublishedLamp? published = null;
        if (
            kind == "filament"
            && specification.Code is { } code
            && LampTable.TryFind(code, _bike.SystemVoltage, out published)
        )
            kind =
                published!.Tolerance is not null ? "published"
                : published.MaximumPower is not null ? "maximum only"
                : kind;
        return Add(
            PartKind.Lamp,
            $"lamp '{lamp.Lamp}'",
            "lamp",
            kind,
            kind == "published" ? published!.Tolerance : null
        );
    }

    private int AddWire(WireSize size, Dictionary<WireSize, int> known)
    {
        if (known.TryGetValue(size, out int part))
            return part;
        string kind = size.Construction switch
        {
            WireConstruction.MetricCable or WireConstruction.MetricStrands or WireConstruction.InchStrands =>
                "metric cable",
            WireConstruction.SolidGauge or WireConstruction.StandardWireGauge => "solid gauge",
            WireConstruction.StrandedGauge => "stranded gauge",
            _ => throw new InvalidOperationException($"Unknown construction {size.Construction}."),
        };
        return known[size] = Add(PartKind.Wire, $"wire {size.Name}", "wire", kind);
    }

    private int Add(PartKind kind, string name, string row, string rowKind = "", Ratio? own = null)
    {
        TableRow found = _rows.Single(r => r.Text("part") == row && r.Text("kind") == rowKind);
        if (!_spreads.TryGetValue((found, own), out PartSpread? spread))
            _spreads[(found, own)] = spread = PartSpread.Of(found, own, _scale);
        _parts.Add(new TolerancePart(kind, name, spread));
        return _parts.Count - 1;
    }

    private void CheckTemperature()
    {
        if (_temperature == None)
            return;
        PartSpread spread = Parts[_temperature].Spread;
        double celsius = _bike.WireTemperature.DegreesCelsius;
        if (celsius + spread.Low < Copper.LowestCelsius || celsius + spread.High > Copper.HighestCelsius)
            throw new ArgumentException(
                $"The wire temperature and its tolerance ({spread.Limits}) are outside the range of copper, "
                    + $"{Copper.LowestCelsius} °C to {Copper.HighestCelsius} °C."
            );
    }
}
