namespace Lighting.Calc;

/// <summary>Size limits of a list: far above any bike.</summary>
internal static class ListLimits
{
    public const int Bytes = 4 * 1024 * 1024;
    public const int Rows = 10_000;
    public const int CellCharacters = 500;
    public const int HeaderCells = 100;

    /// <summary>Unknown names whose nearest known ones are sought, which takes time in a list of thousands.</summary>
    public const int Explained = 200;
}
