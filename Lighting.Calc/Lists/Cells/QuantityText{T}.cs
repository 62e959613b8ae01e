using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Strict reader of one kind of quantity: <c>1.8 m</c>, <c>1.8m</c>, <c>6 ft</c>, or a bare number in the bare
/// unit.</summary>
/// <remarks>
/// Decimal point only; no thousands separators. The quantity is always in the bare unit. Immutable;
/// the kinds are in <see cref="QuantityText"/>.
/// </remarks>
/// <typeparam name="TQuantity">A UnitsNet quantity.</typeparam>
internal sealed class QuantityText<TQuantity>
    where TQuantity : struct, IQuantity
{
    private const double Smallest = 1e-9;

    private readonly string _noun;
    private readonly Func<double, TQuantity> _from;
    private readonly Func<TQuantity, double> _to;
    private readonly UnitWord[] _units;
    private double _lowest;
    private double _highest;
    private bool _orZero;

    internal QuantityText(
        string noun,
        Func<double, TQuantity> from,
        Func<TQuantity, double> to,
        double lowest,
        double highest,
        UnitWord[] units
    )
    {
        _noun = noun;
        _from = from;
        _to = to;
        _units = units;
        _lowest = lowest;
        _highest = highest;
    }

    /// <summary>The same reader, also accepting zero.</summary>
    internal QuantityText<TQuantity> OrZero()
    {
        var copy = (QuantityText<TQuantity>)MemberwiseClone();
        copy._orZero = true;
        return copy;
    }

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">The text; spaces round it and before the unit do not matter.</param>
    /// <param name="quantity">The quantity, in the bare unit; zero when there is a problem.</param>
    /// <param name="problem">Why the text is not such a quantity; null if it is.</param>
    /// <returns>Whether the text is such a quantity.</returns>
    public bool TryParse(string text, out TQuantity quantity, [NotNullWhen(false)] out TextProblem? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        problem = Read(text.Trim(), out double value);
        quantity = _from(problem is null ? value : 0);
        return problem is null;
    }

    /// <summary>Form in lists: the number in the bare unit, exact.</summary>
    internal string Write(TQuantity quantity) => _to(quantity).ToString("R", CultureInfo.InvariantCulture);

    /// <summary>The same reader with the range of a bike's figure.</summary>
    internal QuantityText<TQuantity> Within(ValueRange range)
    {
        QuantityText<TQuantity> copy = Within(range.Lowest, range.Highest);
        return range.OrZero ? copy.OrZero() : copy;
    }

    internal QuantityText<TQuantity> Within(double lowest, double highest)
    {
        var copy = (QuantityText<TQuantity>)MemberwiseClone();
        copy._lowest = lowest;
        copy._highest = highest;
        return copy;
    }

    private TextProblem? Read(string text, out double value)
    {
        if (!StrictNumber.TrySplit(text, out value, out ReadOnlySpan<char> word))
            return new TextProblem(text, $"is not {_noun}", HowToWrite(text));
        UnitWord? unit = word.IsEmpty ? _units[0] : Unit(word);
        if (unit is null)
            return new TextProblem(
                text,
                "has an unknown unit",
                $"expected {Choice.Of(_units.Where(u => u.Shown).Select(u => u.Word))}"
            );
        value = unit.ToBare(value);
        if (
            value == 0
                ? _orZero || (_lowest <= 0 && _highest >= 0)
                : value >= _lowest && value <= _highest && Math.Abs(value) >= Smallest
        )
            return null;
        return new TextProblem(
            text,
            "is out of range",
            $"expected {(_orZero ? "0 or " : "")}{Shown(_lowest)} to {Shown(_highest)}"
        );
    }

    private UnitWord? Unit(ReadOnlySpan<char> word)
    {
        foreach (UnitWord unit in _units)
            if (word.SequenceEqual(unit.Word))
                return unit;
        return null;
    }

    private string HowToWrite(string text) =>
        StrictNumber.WithDecimalPoint(text) is { } corrected ? $"write a decimal point: {corrected}"
        : text.Contains(',', StringComparison.Ordinal) ? "write a decimal point and no thousands separator"
        : $"expected a number such as {Shown(Math.Clamp(1, _lowest, _highest))}";

    private string Shown(double value)
    {
        string number = value.ToString("0.#########", CultureInfo.InvariantCulture);
        return _units[0].Word.Length == 0 ? number : $"{number} {_units[0].Word}";
    }
}
