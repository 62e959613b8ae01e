using System.Globalization;

namespace Lighting.Calc;

/// <summary>Range of a figure of a bike, in the bare unit of its list column.</summary>
/// <param name="Lowest">Lowest value.</param>
/// <param name="Highest">Highest value.</param>
/// <param name="Unit">The bare unit.</param>
/// <param name="OrZero">Whether zero is accepted besides.</param>
internal readonly record struct ValueRange(double Lowest, double Highest, string Unit, bool OrZero = false)
{
    /// <summary>Whether a value is within the range; nothing that is no number is.</summary>
    public bool Holds(double value) => (value >= Lowest && value <= Highest) || (OrZero && value == 0);

    /// <summary>The range in words: <c>expected 0 or 0.001 m to 100 m</c>.</summary>
    public string Expected => $"expected {(OrZero ? "0 or " : "")}{Shown(Lowest)} to {Shown(Highest)}";

    private string Shown(double value) =>
        $"{value.ToString("0.#########", CultureInfo.InvariantCulture)} {Unit}".TrimEnd();
}
