namespace Lighting.Calc;

/// <summary>How the temperature rise of a conductor grows with its current, up to its rating.</summary>
public enum ConductorHeatRule
{
    /// <summary>With the square of the current: the heat of a resistance (BS 7671, appendix 4, 6.1).</summary>
    Square,

    /// <summary>With its square root, which is more at every part load: conservative (AC 43.13-1B, paragraph
    /// 11-66).</summary>
    SquareRoot,
}
