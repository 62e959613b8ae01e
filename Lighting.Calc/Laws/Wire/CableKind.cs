namespace Lighting.Calc;

/// <summary>The kind of cable, on which a wire's current rating depends.</summary>
public enum CableKind
{
    /// <summary>Ordinary PVC vehicle cable, 70 °C, by its trade rating.</summary>
    Ordinary,

    /// <summary>Thin-wall vehicle cable (ISO 6722 class B, 105 °C), by its trade rating.</summary>
    ThinWall,

    /// <summary>A single wire spaced in free air, by the national tables.</summary>
    FreeAir,
}
