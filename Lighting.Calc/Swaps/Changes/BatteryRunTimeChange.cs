namespace Lighting.Calc;

/// <summary>How long the battery carries one setting with the engine off, before and after, to one state of
/// charge.</summary>
public sealed record BatteryRunTimeChange
{
    internal BatteryRunTimeChange(Setting setting, BatteryRunTime before, BatteryRunTime after) =>
        (Setting, Before, After) = (setting, before, after);

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>The time before.</summary>
    public BatteryRunTime Before { get; }

    /// <summary>The time after.</summary>
    public BatteryRunTime After { get; }
}
