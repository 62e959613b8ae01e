namespace Lighting.Calc;

/// <summary>The loads that have fuses of their own.</summary>
[Flags]
internal enum ApartLoads
{
    None = 0,
    Headlamp = 1,
    Ignition = 2,
    Dip = 4,
    Main = 8,
}
