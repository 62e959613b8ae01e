using UnitsNet;

namespace Lighting.Calc;

/// <summary>Current that an ammeter shows in the place of a fuse on a healthy bike.</summary>
public sealed class ExpectedCurrent
{
    internal ExpectedCurrent(string fuse, double current, double lowest, double highest)
    {
        Fuse = fuse;
        (Current, Lowest, Highest) = (
            ElectricCurrent.FromAmperes(current),
            ElectricCurrent.FromAmperes(lowest),
            ElectricCurrent.FromAmperes(highest)
        );
    }

    /// <summary>The fuse.</summary>
    public string Fuse { get; }

    /// <summary>The current, without sign.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Lower limit: two standard deviations.</summary>
    public ElectricCurrent Lowest { get; }

    /// <summary>Upper limit.</summary>
    public ElectricCurrent Highest { get; }
}
