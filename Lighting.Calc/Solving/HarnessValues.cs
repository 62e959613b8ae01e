namespace Lighting.Calc;

/// <summary>The values of the parts a harness is solved with, in SI units: those of its lists, until a solver is given
/// others.</summary>
internal sealed class HarnessValues
{
    public HarnessValues(Bike bike)
    {
        Lamps = [.. bike.Lamps.Select(l => l.Specification)];
        WireOhms = [.. bike.Runs.Select(r => r.WireResistance(bike.WireTemperature).Ohms)];
        JointOhms = [.. bike.Runs.Select(r => r.TotalJointResistance.Ohms)];
        ContactOhms = [.. bike.Switches.Select(s => s.Resistance.Ohms)];
        // Without runs drops are not included, the fuse's own as little as any wire's.
        FuseOhms = [.. bike.Fuses.Select(f => bike.HasNetwork ? FuseTable.ResistanceOf(f).Ohms : 0)];
    }

    private HarnessValues(HarnessValues other)
    {
        Lamps = [.. other.Lamps];
        WireOhms = [.. other.WireOhms];
        JointOhms = [.. other.JointOhms];
        ContactOhms = [.. other.ContactOhms];
        FuseOhms = [.. other.FuseOhms];
    }

    public LampSpecification[] Lamps { get; }

    public double[] WireOhms { get; }

    public double[] JointOhms { get; }

    public double[] ContactOhms { get; }

    public double[] FuseOhms { get; }

    public bool HasDrivers => Array.Exists(Lamps, l => l.Type == LampType.Led);

    public HarnessValues Copy() => new(this);
}
