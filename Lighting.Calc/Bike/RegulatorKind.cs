namespace Lighting.Calc;

/// <summary>Type of regulator.</summary>
public enum RegulatorKind
{
    /// <summary>Unknown: the surplus is reported with its effect without a regulator.</summary>
    NotStated,

    /// <summary>No regulator: the whole surplus flows into the battery.</summary>
    None,

    /// <summary>Shunt regulator (Zener diode or shorting type): dissipates the surplus.</summary>
    Shunt,

    /// <summary>Series regulator or field control: no surplus.</summary>
    Series,
}
