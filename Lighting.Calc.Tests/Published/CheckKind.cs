namespace Lighting.Calc.Tests.Published;

/// <summary>What a published check proves.</summary>
internal enum CheckKind
{
    /// <summary>Not said: refused.</summary>
    Unstated,

    /// <summary>A model computes what a publication prints, from other figures than the printed one. Only this is a
    /// deviation.</summary>
    Model,

    /// <summary>The library reads the publication's own figures: the check is of the copy.</summary>
    Copied,

    /// <summary>The inputs decide: sums, products and definitions.</summary>
    Arithmetic,
}
