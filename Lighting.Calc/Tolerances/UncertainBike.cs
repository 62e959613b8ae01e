using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike whose parts have spreads: which parts, and the bike that one set of their values makes.</summary>
/// <remarks>A part that is listed with nothing (no joints, no resistance) has no spread: a multiple of nothing is nothing.</remarks>
internal sealed class UncertainBike
{
    private const int None = -1;

    private readonly ImmutableArray<TableRow> _rows = [.. PublishedTable.Load("tolerances").Read()];
    private readonly ImmutableArray<TolerancePart>.Builder _parts = ImmutableArray.CreateBuilder<TolerancePart>();
    private readonly double _scale;
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

    public UncertainBike(Bike bike, ElectricPotential? supply, double scale)
    {
        Bike = bike;
        _scale = scale;
        Kind = supply is not { } volts || volts.Volts == bike.ChargingVoltage.Volts ? SupplyKind.Regulator
            : volts.Volts == bike.BatteryVoltage.Volts ? SupplyKind.Battery : SupplyKind.Measured;
        Supply = supply ?? bike.ChargingVoltage;
        _lamp = [.. bike.Lamps.Select(AddLamp)];
        var sizes = new Dictionary<WireSize, int>();
        _wire = [.. bike.Runs.Select(r => r.Length.Meters > 0 ? AddWire(r.Wire, sizes) : None)];
        _temperature = _wire.Any(w => w != None) ? Add(PartKind.WireTemperature, "wire temperature", "wire temperature") : None;
        _joint = [.. bike.Runs.Select(r => r.TotalJointResistance.Ohms > 0 ? Add(PartKind.Joint, $"joints of '{r.Name}'", "joint") : None)];
        _contact = [.. bike.Switches.Select(s => s.Resistance.Ohms > 0 ? Add(PartKind.Contact, $"contact '{s.Name}'", "contact") : None)];
        _fuse = [.. bike.Fuses.Select(f => bike.HasNetwork && FuseTable.ResistanceOf(f).Ohms > 0 ? Add(PartKind.Fuse, $"fuse '{f.Name}'", "fuse") : None)];
        _batteryResistance = bike.BatteryResistance.Ohms > 0 ? Add(PartKind.BatteryResistance, "battery resistance", "battery resistance") : None;

        _battery = Add(PartKind.BatteryVolts, "battery volts", "battery volts");
        _regulator = Kind == SupplyKind.Regulator || !bike.Charging.IsEmpty ? Add(PartKind.RegulatorVolts, "regulator volts", "regulator volts") : None;
        _stator = bike.Charging.IsEmpty ? None : Add(PartKind.StatorOutput, "stator output", "stator output");
        Parts = _parts.ToImmutable();
        CheckTemperature();
    }

    public Bike Bike { get; }

    public ElectricPotential Supply { get; }

    public SupplyKind Kind { get; }

    /// <summary>Every part with a spread; a set of values has one for each, a factor or kelvins added.</summary>
    public ImmutableArray<TolerancePart> Parts { get; }

    /// <summary>The values that leave everything as listed.</summary>
    public double[] Listed() => [.. Parts.Select(p => p.Spread.Listed)];

    public double LampCurrent(double[] values, int lamp) => Of(values, _lamp[lamp]);

    public double ContactResistance(double[] values, int contact) => Of(values, _contact[contact]);

    public double FuseResistance(double[] values, int fuse) => Of(values, _fuse[fuse]);

    public double JointResistance(double[] values, int run) => Of(values, _joint[run]);

    /// <summary>Factor on the resistance at 20 °C.</summary>
    public double WireResistance(double[] values, int run) => Of(values, _wire[run]);

    public double WireCelsius(double[] values) => Bike.WireTemperature.DegreesCelsius + (_temperature == None ? 0 : values[_temperature]);

    public double BatteryResistance(double[] values) => Of(values, _batteryResistance);

    public double BatteryVolts(double[] values) => Of(values, _battery);

    public double RegulatorVolts(double[] values) => Of(values, _regulator);

    public double StatorOutput(double[] values) => Of(values, _stator);

    public double SupplyVolts(double[] values) => Supply.Volts * Kind switch
    {
        SupplyKind.Regulator => RegulatorVolts(values),
        SupplyKind.Battery => BatteryVolts(values),
        _ => 1,
    };

    private static double Of(double[] values, int part) => part == None ? 1 : values[part];

    private int AddLamp(FittedLamp lamp)
    {
        LampSpecification specification = lamp.Specification;
        string kind = specification.Type switch
        {
            LampType.Led => "led",
            LampType.LedBallast => "led ballast",
            LampType.Fixed => "fixed",
            LampType.Resistor => "resistor",
            _ => "filament",
        };
        PublishedLamp? published = null;
        if (kind == "filament" && specification.Code is { } code && LampTable.TryFind(code, Bike.SystemVoltage, out published))
            kind = published!.Tolerance is not null ? "published" : published.MaximumPower is not null ? "maximum only" : kind;
        return Add(PartKind.Lamp, $"lamp '{lamp.Lamp}'", "lamp", kind, kind == "published" ? published!.Tolerance : null);
    }

    private int AddWire(WireSize size, Dictionary<WireSize, int> known)
    {
        if (known.TryGetValue(size, out int part))
            return part;
        string kind = size.Construction switch
        {
            WireConstruction.MetricCable => "metric cable",
            WireConstruction.SolidGauge => "solid gauge",
            WireConstruction.StrandedGauge => "stranded gauge",
            _ => throw new InvalidOperationException($"Unknown construction {size.Construction}."),
        };
        return known[size] = Add(PartKind.Wire, $"wire {size.Name}", "wire", kind);
    }

    private int Add(PartKind kind, string name, string row, string rowKind = "", Ratio? own = null)
    {
        TableRow found = _rows.Single(r => r.Text("part") == row && r.Text("kind") == rowKind);
        _parts.Add(new TolerancePart(kind, name, PartSpread.Of(found, own, _scale)));
        return _parts.Count - 1;
    }

    private void CheckTemperature()
    {
        if (_temperature == None)
            return;
        PartSpread spread = Parts[_temperature].Spread;
        double celsius = Bike.WireTemperature.DegreesCelsius;
        if (celsius + spread.Low < Copper.LowestCelsius || celsius + spread.High > Copper.HighestCelsius)
            throw new ArgumentException($"The wire temperature and its spread ({spread.Limits}) leave the range of copper, {Copper.LowestCelsius} °C to {Copper.HighestCelsius} °C.");
    }
}
