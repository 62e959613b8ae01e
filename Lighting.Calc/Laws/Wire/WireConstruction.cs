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

    /// <summary>Cable by the count of its strands and their diameter in millimetres, such as <c>14/0.30</c>.</summary>
    MetricStrands,

    /// <summary>Old cable by the count of its strands and their diameter in inches, such as <c>14/.012</c>.</summary>
    InchStrands,

    /// <summary>Imperial standard wire gauge, solid conductor of annealed copper.</summary>
    StandardWireGauge,
}
