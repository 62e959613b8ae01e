namespace Lighting.Calc;

/// <summary>Where the source's volts come from, and so which spread they have.</summary>
internal enum SupplyKind
{
    /// <summary>The regulator, engine running.</summary>
    Regulator,

    /// <summary>The battery, engine off.</summary>
    Battery,

    /// <summary>Given as measured.</summary>
    Measured,
}
