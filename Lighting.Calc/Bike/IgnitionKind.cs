namespace Lighting.Calc;

/// <summary>What supplies the ignition.</summary>
public enum IgnitionKind
{
    /// <summary>Not stated: the battery where an ignition load is listed.</summary>
    NotStated,

    /// <summary>The battery: the engine runs only with the ignition on.</summary>
    Battery,

    /// <summary>A magneto, or another source of its own: the engine runs with everything off.</summary>
    Magneto,
}
