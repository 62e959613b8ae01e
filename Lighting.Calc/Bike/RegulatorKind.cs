namespace Lighting.Calc;

/// <summary>What keeps the surplus out of a full battery.</summary>
public enum RegulatorKind
{
    /// <summary>The lists do not tell: the surplus is reported with what it would do unregulated.</summary>
    NotStated,

    /// <summary>None: the whole surplus goes into the battery.</summary>
    None,

    /// <summary>A shunt (Zener diode or shorting regulator) that turns the surplus into heat.</summary>
    Shunt,

    /// <summary>A series regulator or a field control, which makes no surplus.</summary>
    Series,
}
