namespace Lighting.Calc;

/// <summary>A setting of a harness has no operating point, or none was found. The message names the parts.</summary>
public sealed class NetworkNotSolvedException : Exception
{
    internal NetworkNotSolvedException(string message, Setting setting, bool isDeadShort)
        : base(message)
    {
        Setting = setting;
        IsDeadShort = isDeadShort;
    }

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>Whether the source is joined to itself without any resistance, so that no current can be
    /// computed.</summary>
    public bool IsDeadShort { get; }
}
