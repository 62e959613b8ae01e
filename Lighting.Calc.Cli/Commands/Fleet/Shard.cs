using System.Globalization;

namespace Lighting.Calc.Cli.Commands;

/// <summary>A fixed part of many things: of every <paramref name="Count"/> in their order the one at place
/// <paramref name="Part"/>.</summary>
/// <param name="Part">From 1 to <paramref name="Count"/>.</param>
/// <param name="Count">How many parts there are.</param>
internal readonly record struct Shard(int Part, int Count)
{
    private const int MostParts = 1_000_000;

    /// <summary>All of them.</summary>
    public static Shard Whole { get; } = new(1, 1);

    public static bool TryParse(string text, out Shard shard)
    {
        shard = Whole;
        string[] sides = text.Split('/');
        if (
            sides.Length != 2
            || !int.TryParse(sides[0], NumberStyles.None, CultureInfo.InvariantCulture, out int part)
            || !int.TryParse(sides[1], NumberStyles.None, CultureInfo.InvariantCulture, out int count)
            || part < 1
            || part > count
            || count > MostParts
        )
            return false;
        shard = new Shard(part, count);
        return true;
    }

    public IEnumerable<T> Of<T>(IEnumerable<T> items)
    {
        Shard self = this;
        return items.Where((_, index) => index % self.Count == self.Part - 1);
    }
}
