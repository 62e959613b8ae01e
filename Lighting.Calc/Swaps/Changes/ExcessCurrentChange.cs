namespace Lighting.Calc;

/// <summary>Where most amps are over after the swap, and what was over there before.</summary>
internal sealed record ExcessCurrentChange
{
    internal ExcessCurrentChange(Setting setting, BalancePoint before, BalancePoint after) =>
        (Setting, Before, After) = (setting, before, after);

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>The balance there before.</summary>
    public BalancePoint Before { get; }

    /// <summary>The balance there after; its net is known and above zero.</summary>
    public BalancePoint After { get; }
}
