namespace Lighting.Calc;

/// <summary>Where the regulator takes its voltage, on a bike whose generator joins the harness apart from the
/// battery.</summary>
public enum RegulatorPlace
{
    /// <summary>Where the generator joins the harness, as a unit with its rectifier.</summary>
    Generator,

    /// <summary>At the battery's terminals, as a Zener diode or the sense wire of a regulator on a lead of its
    /// own.</summary>
    Battery,
}
