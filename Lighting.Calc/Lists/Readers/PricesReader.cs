using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Reads <c>prices.csv</c>: what a metre of wire or a terminal costs.</summary>
internal static class PricesReader
{
    /// <summary>The prices of the rows that are valid; the others are logged.</summary>
    public static ImmutableArray<ItemPrice> Read(ListTable table)
    {
        var names = new UniqueNames("item", "item");
        var prices = ImmutableArray.CreateBuilder<ItemPrice>();
        foreach (ListRow row in table.Rows)
        {
            string item = names.Take(row);
            decimal? price = Price(row);
            if (!row.IsFaulty && price is { } known)
                prices.Add(new ItemPrice(item, known));
        }

        return prices.ToImmutable();
    }

    private static decimal? Price(ListRow row)
    {
        if (row.Required("price") is not { } text)
            return null;
        if (
            StrictNumber.TrySplit(text, out double price, out ReadOnlySpan<char> word)
            && word.Length == 0
            && price is >= 0 and <= 1e6
        )
            return (decimal)price;
        row.Fault(
            "price",
            text,
            "is not a price",
            StrictNumber.WithDecimalPoint(text) is { } point
                ? $"write a decimal point: {point}"
                : "expected a bare number from 0 to 1000000 in any one currency, such as 1.20"
        );
        return null;
    }
}
