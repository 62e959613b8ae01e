namespace Lighting.Calc;

/// <summary>A lamp or other load of a bike that is converted to another system voltage.</summary>
/// <param name="Before">As it is fitted.</param>
/// <param name="After">What takes its place.</param>
/// <param name="IsListed">Whether a table has it; else it is taken as of the same watts.</param>
internal sealed record ConvertedLoad(FittedLamp Before, FittedLamp After, bool IsListed);
