namespace Lighting.Calc;

/// <summary>Brightness of a lamp or of the test lamp, as seen.</summary>
public enum Brightness
{
    /// <summary>No light.</summary>
    Dark,

    /// <summary>Clearly less light than expected.</summary>
    Dim,

    /// <summary>The light expected (<c>lit</c> for a test lamp).</summary>
    Normal,

    /// <summary>Clearly more light than expected.</summary>
    Bright,
}
