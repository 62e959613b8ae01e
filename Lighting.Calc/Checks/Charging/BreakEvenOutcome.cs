namespace Lighting.Calc;

/// <summary>Whether there is an engine speed from which the output covers the load.</summary>
public enum BreakEvenOutcome
{
    /// <summary>There is: from that speed on the battery gains.</summary>
    At,

    /// <summary>There is no load to cover.</summary>
    Always,

    /// <summary>The output does not cover the load anywhere on the curve, or at any speed of a fitted
    /// machine.</summary>
    Never,

    /// <summary>The output covers the load already at the curve's first point; how far below is not on the
    /// curve.</summary>
    BelowCurve,

    /// <summary>The bike has no charging list, or its curves for the setting share no speeds.</summary>
    NotKnown,
}
