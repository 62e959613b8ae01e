namespace Lighting.Calc;

/// <summary>What a wire's current rating rests on.</summary>
public enum CurrentRatingBasis
{
    /// <summary>A printed rating of this very size.</summary>
    Published,

    /// <summary>This size has none; the printed rating of the next thinner size that has one is taken.</summary>
    ThinnerSize,

    /// <summary>No rating is printed for this size or for any thinner one.</summary>
    NoPublishedRating,

    /// <summary>No factor is printed for a bundle of so many wires.</summary>
    NoPublishedBundleFactor,

    /// <summary>The air is as hot as the insulation may become: the wire carries nothing.</summary>
    AmbientTooHot,
}
