
namespace Lighting.Calc;

/// <summary>The numbers of one sample as the circuits take them. For one thread; setting a new sample allocates nothing.</summary>
internal sealed class SampleParts
{
    private readonly UncertainBike _uncertain;
    private readonly HarnessNetwork _network;
    private readonly double[] _wireOhmsAt20;
    private readonly double[] _jointOhms;
    private readonly double[] _contactOhms;
    private readonly double[] _fuseOhms;
    private readonly Load[] _listedLoads;

    public SampleParts(UncertainBike uncertain, HarnessNetwork network)
    {
        _uncertain = uncertain;
        _network = network;
        Bike bike = uncertain.Bike;
        _wireOhmsAt20 = [.. bike.Runs.Select(r => r.Wire.OhmsPerMetreAt20 * r.Length.Meters)];
        _jointOhms = [.. bike.Runs.Select(r => r.TotalJointResistance.Ohms)];
        _contactOhms = [.. bike.Switches.Select(s => s.Resistance.Ohms)];
        _fuseOhms = [.. bike.Fuses.Select(f => bike.HasNetwork ? FuseTable.ResistanceOf(f).Ohms : 0)];
        _listedLoads = [.. bike.Lamps.Select(l => CircuitLoad.Of(l.Specification, l.Quantity, bike.Earth))];
        Ohms = new double[network.Circuit.ConductorCount];
        Loads = new Load[_listedLoads.Length];
    }

    /// <summary>Ohms by conductor of the whole circuit, contacts as closed.</summary>
    public double[] Ohms { get; }

    /// <summary>Loads by load of the whole circuit.</summary>
    public Load[] Loads { get; }

    public double SupplyVolts { get; private set; }

    public double ChargingVolts { get; private set; }

    /// <summary>Factor on the battery's volts, engine off.</summary>
    public double BatteryFactor { get; private set; }

    public double BatteryOhms { get; private set; }

    public double StatorFactor { get; private set; }

    public void Set(double[] values)
    {
        double warm = Copper.ResistanceFactorAt(_uncertain.WireCelsius(values));
        for (int i = 0; i < _wireOhmsAt20.Length; i++)
            Ohms[_network.RunConductors[i]] = _wireOhmsAt20[i] * _uncertain.WireResistance(values, i) * warm + _jointOhms[i] * _uncertain.JointResistance(values, i);
        for (int i = 0; i < _contactOhms.Length && i < _network.ContactConductors.Length; i++)
            Ohms[_network.ContactConductors[i]] = _contactOhms[i] * _uncertain.ContactResistance(values, i);
        for (int i = 0; i < _fuseOhms.Length; i++)
            Ohms[_network.FuseConductors[i]] = _fuseOhms[i] * _uncertain.FuseResistance(values, i);
        for (int i = 0; i < Loads.Length; i++)
            Loads[_network.Loads[i]] = _listedLoads[i].Times(_uncertain.LampCurrent(values, i));
        SupplyVolts = _uncertain.SupplyVolts(values);
        ChargingVolts = _uncertain.Bike.ChargingVoltage.Volts * _uncertain.RegulatorVolts(values);
        BatteryFactor = _uncertain.BatteryVolts(values);
        BatteryOhms = _uncertain.Bike.BatteryResistance.Ohms * _uncertain.BatteryResistance(values);
        StatorFactor = _uncertain.StatorOutput(values);
    }
}
