namespace Lighting.Calc.Network;

/// <summary>The list a link comes from.</summary>
internal enum HarnessLinkKind
{
    /// <summary>A run.</summary>
    Run,

    /// <summary>A switch contact.</summary>
    Contact,

    /// <summary>A fuse.</summary>
    Fuse,

    /// <summary>A lamp or other load, where a way may lead through one.</summary>
    Lamp,
}
