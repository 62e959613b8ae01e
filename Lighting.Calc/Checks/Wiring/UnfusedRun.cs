namespace Lighting.Calc;

/// <summary>A run that the battery reaches without passing a fuse.</summary>
/// <param name="Run">The run.</param>
/// <param name="Setting">The first setting in which it is so.</param>
/// <param name="LargestFuse">Of a battery lead the largest of the fuses it leads to; null of other runs.</param>
internal sealed record UnfusedRun(Run Run, Setting Setting, Fuse? LargestFuse)
{
    /// <summary>Whether it only leads to fuses: the lead from the battery to the first fuse, which is common and is
    /// kept short.</summary>
    public bool IsBatteryLead => LargestFuse is not null;
}
