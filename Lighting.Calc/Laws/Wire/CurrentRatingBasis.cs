namespace Lighting.Calc;

/// <summary>Basis of a current rating.</summary>
internal enum CurrentRatingBasis
{
    /// <summary>A printed rating of this size.</summary>
    Published,

    /// <summary>No rating is printed for this size; that of the next smaller size is used.</summary>
    SmallerSize,

    /// <summary>No rating is printed for this size or any smaller one.</summary>
    NoPublishedRating,

    /// <summary>No factor is printed for a bundle of so many wires.</summary>
    NoPublishedBundleFactor,

    /// <summary>The ambient is as hot as the limit of the insulation: the rating is zero.</summary>
    AmbientTooHot,
}
