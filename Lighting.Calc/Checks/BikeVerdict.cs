namespace Lighting.Calc;

/// <summary>The verdict on a bike.</summary>
public enum BikeVerdict
{
    /// <summary>All that the lists allow to judge was judged, and nothing is against it.</summary>
    Suits,

    /// <summary>A fault was found.</summary>
    DoesNotSuit,

    /// <summary>No fault was found, but something that decides could not be judged, such as a fuse that is not
    /// listed.</summary>
    NotJudged,
}
