namespace Lighting.Calc;

/// <summary>What keeps a run from being one size thinner.</summary>
internal enum SizingConstraint
{
    /// <summary>Nothing: there is no thinner listed size.</summary>
    SmallestListed,

    /// <summary>The least size that the builder wants for its strength.</summary>
    Mechanical,

    /// <summary>Heat: its own steady current against its current rating.</summary>
    Heat,

    /// <summary>The fuse that feeds it: a fault may draw the fuse's rating continuously.</summary>
    Fuse,

    /// <summary>A dead short at its far end: the fuse would not open in time.</summary>
    Short,

    /// <summary>The voltage that a lamp may lose.</summary>
    Drop,

    /// <summary>Few sizes: a smaller size would do, but would be one more to buy.</summary>
    FewSizes,

    /// <summary>Thinner would do as well: a run without length, which costs no copper.</summary>
    None,
}
