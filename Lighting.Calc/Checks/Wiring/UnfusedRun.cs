namespace Lighting.Calc;

/// <summary>A run that the battery reaches without passing a fuse.</summary>
internal sealed record UnfusedRun
{
    internal UnfusedRun(Run run, Setting setting, Fuse? largestFuse) =>
        (Run, Setting, LargestFuse) = (run, setting, largestFuse);

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>The first setting in which it is so.</summary>
    public Setting Setting { get; }

    /// <summary>Whether it only leads to fuses: the lead from the battery to the first fuse, which is common and is
    /// kept short.</summary>
    public bool IsBatteryLead => LargestFuse is not null;

    /// <summary>Of a battery lead the largest of the fuses it leads to; null of other runs.</summary>
    internal Fuse? LargestFuse { get; }
}
