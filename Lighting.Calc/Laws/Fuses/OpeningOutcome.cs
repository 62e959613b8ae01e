namespace Lighting.Calc;

/// <summary>What the published gates say of a fuse at one current.</summary>
internal enum OpeningOutcome
{
    /// <summary>At or below the rating: it carries the current.</summary>
    Carries,

    /// <summary>Above the rating, below the first gate by which it must have opened: it may or may not open.</summary>
    BelowOpeningGates,

    /// <summary>Within the gates: it opens, within a published band of time.</summary>
    Opens,

    /// <summary>Above the last gate: it opens, and no slower than the last gate's melting energy allows; how fast is
    /// not published.</summary>
    AboveGates,
}
