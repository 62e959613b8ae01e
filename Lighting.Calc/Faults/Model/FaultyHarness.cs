namespace Lighting.Calc;

/// <summary>The harness in a setting under one or two faults: the same for the live circuit, the cold circuit and
/// visual readings.</summary>
internal sealed class FaultyHarness(FaultCircuit circuit)
{
    /// <summary>Resistance that faults add to each conductor.</summary>
    public double[] AddedOhms { get; } = new double[circuit.Parts.Length];

    /// <summary>Whether a conductor is an open contact or a blown fuse.</summary>
    public bool[] IsOpen { get; } = new bool[circuit.Parts.Length];

    /// <summary>Whether a point touches the frame.</summary>
    public bool[] IsShorted { get; } = new bool[circuit.Points.Length];

    public LampFaultChange[] Lamps { get; } = new LampFaultChange[circuit.Lamps.Length];

    /// <summary>Resistance that faults add to the battery or coil.</summary>
    public double SourceOhms { get; set; }

    /// <summary>Share that faults leave of the source's voltage.</summary>
    public double VoltageShare { get; set; }

    public void Set(Setting setting, in FaultMember first, in FaultMember? second)
    {
        Array.Clear(AddedOhms);
        Array.Clear(IsOpen);
        Array.Clear(IsShorted);
        Array.Clear(Lamps);
        (SourceOhms, VoltageShare) = (0, 1);
        for (int i = 0; i < circuit.Contacts.Length; i++)
            IsOpen[circuit.Contacts[i]] = !circuit.Bike.Switches[i].IsClosed(setting);
        first.Family.PutIn(this, first.Case);
        if (second is { } other)
            other.Family.PutIn(this, other.Case);
    }

    /// <summary>Joins a point to the frame, which blows the fuse before it where the source can.</summary>
    public void Short(int point)
    {
        IsShorted[point] = true;
        if (circuit.FuseBefore[point] is >= 0 and var fuse)
            IsOpen[circuit.Fuses[fuse]] = true;
    }
}
