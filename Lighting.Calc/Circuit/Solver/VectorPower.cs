using System.Runtime.Intrinsics;

namespace Lighting.Calc;

/// <summary>x^k for eight numbers at once, to the same last bit on every machine and in every run.</summary>
/// <remarks>
/// The framework's vector logarithm and exponential use fused multiply-adds where the machine and the compiler's stage
/// have them, and so differ in the last bit between machines and between the first runs of a method and its recompiled
/// form. Here are only sums, products and quotients, each rounded by itself. ln m = 2·(s + s³/3 + s⁵/5 + …) with s = (m
/// − 1)/(m + 1) and √½ ≤ m ≤ √2; e^r by its series with |r| ≤ ½·ln 2; both cut where the next term is under 1e-17.
/// Accurate to about 1e-15.
/// </remarks>
internal static class VectorPower
{
    // The upper bits, so that products with small whole numbers are exact.
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;

    private static ReadOnlySpan<double> LogarithmTerms =>
        [1.0 / 23, 1.0 / 21, 1.0 / 19, 1.0 / 17, 1.0 / 15, 1.0 / 13, 1.0 / 11, 1.0 / 9, 1.0 / 7, 1.0 / 5, 1.0 / 3, 1];

    private static ReadOnlySpan<double> ExponentialTerms =>
        [
            1.0 / 87178291200,
            1.0 / 6227020800,
            1.0 / 479001600,
            1.0 / 39916800,
            1.0 / 3628800,
            1.0 / 362880,
            1.0 / 40320,
            1.0 / 5040,
            1.0 / 720,
            1.0 / 120,
            1.0 / 24,
            1.0 / 6,
            1.0 / 2,
            1,
            1,
        ];

    /// <param name="x">Above zero, and normal; other lanes give an arbitrary number.</param>
    /// <param name="k">The exponent; k·ln x lies within ±700.</param>
    public static Vector512<double> Of(Vector512<double> x, double k) => Exponential(Logarithm(x) * k);

    private static Vector512<double> Logarithm(Vector512<double> x)
    {
        Vector512<long> bits = x.AsInt64();
        Vector512<double> exponent = Vector512.ConvertToDouble(
            Vector512.ShiftRightLogical(bits, 52) - Vector512.Create(1023L)
        );
        Vector512<double> m = (
            (bits & Vector512.Create(0x000F_FFFF_FFFF_FFFFL)) | Vector512.Create(0x3FF0_0000_0000_0000L)
        ).AsDouble();
        Vector512<double> isLarge = Vector512.GreaterThan(m, Vector512.Create(1.4142135623730951));
        m = Vector512.ConditionalSelect(isLarge, m * 0.5, m);
        exponent = Vector512.ConditionalSelect(isLarge, exponent + Vector512<double>.One, exponent);
        Vector512<double> s = (m - Vector512<double>.One) / (m + Vector512<double>.One),
            square = s * s;
        return exponent * Ln2High + (exponent * Ln2Low + Sum(LogarithmTerms, square) * (s + s));
    }

    private static Vector512<double> Exponential(Vector512<double> y)
    {
        Vector512<double> n = Vector512.Floor(y * (1 / (Ln2High + Ln2Low)) + Vector512.Create(0.5));
        Vector512<double> r = y - n * Ln2High - n * Ln2Low;
        return Sum(ExponentialTerms, r)
            * Vector512.ShiftLeft(Vector512.ConvertToInt64(n) + Vector512.Create(1023L), 52).AsDouble();
    }

    private static Vector512<double> Sum(ReadOnlySpan<double> terms, Vector512<double> x)
    {
        Vector512<double> sum = Vector512<double>.Zero;
        foreach (double term in terms)
            sum = sum * x + Vector512.Create(term);
        return sum;
    }
}
