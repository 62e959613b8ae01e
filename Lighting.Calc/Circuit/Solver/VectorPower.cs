using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Lighting.Calc;

/// <summary>x^k for eight numbers at once, to the same last bit on every machine.</summary>
/// <remarks>
/// The framework's vector logarithm and exponential use fused multiply-adds where the machine has them, and so differ in
/// the last bit between machines, and between the first runs of a method and its recompiled form. Here are only sums,
/// products and quotients, each rounded by itself. ln m = 2·(s + s³/3 + s⁵/5 + …) with s = (m − 1)/(m + 1) and
/// √½ ≤ m ≤ √2; e^r by its series with |r| ≤ ½·ln 2; both cut where the next term is under 1e-17. Good to about 1e-15.
/// </remarks>
internal static class VectorPower
{
    private const double Ln2High = 6.93147180369123816490e-01; // the upper bits, so that products with small whole numbers are exact
    private const double Ln2Low = 1.90821492927058770002e-10;

    /// <param name="x">Above zero, and normal; other lanes give an arbitrary number.</param>
    /// <param name="k">The exponent; k·ln x lies within ±700.</param>
    public static Vector512<double> Of(Vector512<double> x, double k) => Exponential(Logarithm(x) * k);

    private static Vector512<double> Logarithm(Vector512<double> x)
    {
        Vector512<long> bits = x.AsInt64();
        Vector512<double> exponent = Vector512.ConvertToDouble(Vector512.ShiftRightLogical(bits, 52) - Vector512.Create(1023L));
        Vector512<double> m = ((bits & Vector512.Create(0x000F_FFFF_FFFF_FFFFL)) | Vector512.Create(0x3FF0_0000_0000_0000L)).AsDouble();
        Vector512<double> isLarge = Vector512.GreaterThan(m, Vector512.Create(1.4142135623730951));
        m = Vector512.ConditionalSelect(isLarge, m * 0.5, m);
        exponent = Vector512.ConditionalSelect(isLarge, exponent + Vector512<double>.One, exponent);
        Vector512<double> s = (m - Vector512<double>.One) / (m + Vector512<double>.One), square = s * s;
        // Written out, so that the compiler folds the coefficients.
        Vector512<double> sum = Vector512.Create(1.0 / 23);
        sum = Next(sum, square, 1.0 / 21);
        sum = Next(sum, square, 1.0 / 19);
        sum = Next(sum, square, 1.0 / 17);
        sum = Next(sum, square, 1.0 / 15);
        sum = Next(sum, square, 1.0 / 13);
        sum = Next(sum, square, 1.0 / 11);
        sum = Next(sum, square, 1.0 / 9);
        sum = Next(sum, square, 1.0 / 7);
        sum = Next(sum, square, 1.0 / 5);
        sum = Next(sum, square, 1.0 / 3);
        sum = Next(sum, square, 1.0 / 1);
        return exponent * Ln2High + (exponent * Ln2Low + sum * (s + s));
    }

    private static Vector512<double> Exponential(Vector512<double> y)
    {
        Vector512<double> n = Vector512.Floor(y * (1 / (Ln2High + Ln2Low)) + Vector512.Create(0.5));
        Vector512<double> r = y - n * Ln2High - n * Ln2Low;
        Vector512<double> sum = Vector512.Create(1.0 / 87178291200);
        sum = Next(sum, r, 1.0 / 6227020800);
        sum = Next(sum, r, 1.0 / 479001600);
        sum = Next(sum, r, 1.0 / 39916800);
        sum = Next(sum, r, 1.0 / 3628800);
        sum = Next(sum, r, 1.0 / 362880);
        sum = Next(sum, r, 1.0 / 40320);
        sum = Next(sum, r, 1.0 / 5040);
        sum = Next(sum, r, 1.0 / 720);
        sum = Next(sum, r, 1.0 / 120);
        sum = Next(sum, r, 1.0 / 24);
        sum = Next(sum, r, 1.0 / 6);
        sum = Next(sum, r, 1.0 / 2);
        sum = Next(sum, r, 1.0 / 1);
        sum = Next(sum, r, 1.0 / 1);
        Vector512<long> scale = Vector512.ShiftLeft(Vector512.ConvertToInt64(n) + Vector512.Create(1023L), 52);
        return sum * scale.AsDouble();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Next(Vector512<double> sum, Vector512<double> x, double coefficient) => sum * x + Vector512.Create(coefficient);
}
