namespace Lighting.Calc;

/// <summary>Where an engine speed lies on what is known of the charging system.</summary>
internal enum OutputRange
{
    /// <summary>On the curve: the output is interpolated.</summary>
    OnCurve,

    /// <summary>The engine stands: the output is zero.</summary>
    Standing,

    /// <summary>Below a curve that begins with zero amps: the machine has not cut in and the output is zero.</summary>
    BelowCutIn,

    /// <summary>Below a curve that begins above zero amps: the output is not known.</summary>
    BelowCurve,

    /// <summary>Above the last point of a curve: the output is not known.</summary>
    AboveCurve,

    /// <summary>By the fitted machine, between the points it was fitted to.</summary>
    Fitted,

    /// <summary>By the fitted machine, outside the points it was fitted to.</summary>
    FittedBeyondPoints,

    /// <summary>No winding works in this setting: the output is zero.</summary>
    NoWinding,

    /// <summary>The bike has no charging list: the output is not known.</summary>
    NoList,
}
