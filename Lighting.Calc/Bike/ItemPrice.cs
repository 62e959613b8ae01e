namespace Lighting.Calc;

/// <summary>Price of one item: one row of <c>prices.csv</c>.</summary>
/// <param name="Item">A wire size (<c>1 mm2</c>), one with its colour (<c>1 mm2 RD</c>), a terminal (<c>blade</c>) or
/// one for a wire size (<c>blade 1 mm2</c>).</param>
/// <param name="Price">Price of a metre of wire or of one terminal, zero or more, in any one currency.</param>
public sealed record ItemPrice(string Item, decimal Price);
