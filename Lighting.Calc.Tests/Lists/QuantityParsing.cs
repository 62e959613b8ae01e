using UnitsNet;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Reads a text that is a quantity, or throws with what is wrong with it.</summary>
internal static class QuantityParsing
{
    public static TQuantity Parse<TQuantity>(this QuantityText<TQuantity> reader, string text)
        where TQuantity : struct, IQuantity =>
        reader.TryParse(text, out TQuantity quantity, out TextProblem? problem)
            ? quantity
            : throw new FormatException(problem.ToString());
}
