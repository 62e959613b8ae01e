namespace Lighting.Calc;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is against it.</summary>
    Note,

    /// <summary>Look at it before relying on the answer.</summary>
    Caution,

    /// <summary>Something does not suit.</summary>
    Fault,
}
