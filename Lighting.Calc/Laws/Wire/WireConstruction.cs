namespace Lighting.Calc;

/// <summary>Basis of the resistance of a wire size.</summary>
public enum WireConstruction
{
    /// <summary>American wire gauge, nominal solid conductor of annealed copper.</summary>
    SolidGauge,

    /// <summary>American wire gauge, concentric-stranded: 2 % more than solid for the lay.</summary>
    StrandedGauge,

    /// <summary>Metric vehicle cable, by its standard's maximum resistance.</summary>
    MetricCable,
}
