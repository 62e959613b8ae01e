namespace Lighting.Calc;

/// <summary>The construction of a fuse, which sets its opening-time gates.</summary>
public enum FuseStyle
{
    /// <summary>Blade fuse.</summary>
    Blade,

    /// <summary>Glass tube fuse.</summary>
    Glass,
}
