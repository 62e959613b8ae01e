namespace Lighting.Calc;

/// <summary>Which end of the battery a stretch of a ride ran into.</summary>
internal enum StateOfChargeLimit
{
    /// <summary>Neither.</summary>
    None,

    /// <summary>Full: what came after is surplus.</summary>
    Full,

    /// <summary>Flat: what the loads wanted after is not there.</summary>
    Flat,
}
