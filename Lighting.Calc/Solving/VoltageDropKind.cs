namespace Lighting.Calc;

/// <summary>Where between the source and a lamp voltage is lost.</summary>
public enum VoltageDropKind
{
    /// <summary>The battery's own resistance.</summary>
    Battery,

    /// <summary>A fuse.</summary>
    Fuse,

    /// <summary>A switch contact.</summary>
    Switch,

    /// <summary>The wire of a run on the live side.</summary>
    FeedWire,

    /// <summary>The joints of a run on the live side.</summary>
    FeedJoint,

    /// <summary>The wire of a run on the earth side.</summary>
    ReturnWire,

    /// <summary>The joints of a run on the earth side.</summary>
    ReturnJoint,
}
