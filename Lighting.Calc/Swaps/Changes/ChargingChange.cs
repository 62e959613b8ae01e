namespace Lighting.Calc;

/// <summary>The charging balance of one setting before and after.</summary>
public sealed record ChargingChange
{
    internal ChargingChange(Setting setting, ChargingBalance before, ChargingBalance after) =>
        (Setting, Before, After) = (setting, before, after);

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>The balance before.</summary>
    public ChargingBalance Before { get; }

    /// <summary>The balance after.</summary>
    public ChargingBalance After { get; }
}
