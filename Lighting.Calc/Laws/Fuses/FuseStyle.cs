namespace Lighting.Calc;

/// <summary>The construction of a fuse, which sets its opening-time gates.</summary>
public enum FuseStyle
{
    /// <summary>Regular blade fuse.</summary>
    Blade,

    /// <summary>Glass tube fuse.</summary>
    Glass,

    /// <summary>Mini blade fuse.</summary>
    Mini,

    /// <summary>Maxi blade fuse, which is slower.</summary>
    Maxi,
}
