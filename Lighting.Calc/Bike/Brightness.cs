namespace Lighting.Calc;

/// <summary>How a lamp, or the test lamp, looks.</summary>
public enum Brightness
{
    /// <summary>No light.</summary>
    Dark,

    /// <summary>Clearly less light than it should give.</summary>
    Dim,

    /// <summary>The light it should give (<c>lit</c> for a test lamp).</summary>
    Normal,

    /// <summary>Clearly more light than it should give.</summary>
    Bright,
}
