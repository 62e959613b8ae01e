namespace Lighting.Calc;

/// <summary>A lamp or other load of a bike that is converted to another system voltage.</summary>
internal sealed class ConvertedLoad
{
    internal ConvertedLoad(FittedLamp before, FittedLamp after, bool isListed) =>
        (Before, After, IsListed) = (before, after, isListed);

    /// <summary>As it is fitted.</summary>
    public FittedLamp Before { get; }

    /// <summary>What takes its place.</summary>
    public FittedLamp After { get; }

    /// <summary>Whether a table has it; else it is taken as of the same watts.</summary>
    public bool IsListed { get; }
}
