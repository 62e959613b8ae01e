namespace Lighting.Calc;

/// <summary>How a load hangs in a state of the contacts, which says how its current is bounded.</summary>
internal enum LoadRole
{
    /// <summary>No current: nothing joins it to anything that could drive one.</summary>
    Dark,

    /// <summary>Feed joined to the live terminal, return to the earth terminal: its drop is limited, and that bounds its current.</summary>
    Driven,

    /// <summary>It bridges two points of one side of the battery; only their small difference drives it.</summary>
    Weak,

    /// <summary>In series with other loads, or the wrong way round: up to the source volts drive it, either way.</summary>
    Strong,

    /// <summary>Joined to a floating part; becomes one of the others.</summary>
    Clump,
}
