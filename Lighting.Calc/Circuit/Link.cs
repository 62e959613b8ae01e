// What an element does to the topology.
namespace Lighting.Calc;

internal enum Link : byte
{
    /// <summary>No connection: infinite resistance, or a disconnected load.</summary>
    Open,

    /// <summary>A resistance between zero and infinity, or a load.</summary>
    Finite,

    /// <summary>Zero resistance: both nodes are one.</summary>
    Merged,
}
