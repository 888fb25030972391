using System;

namespace ToolLedger.Statistics;

/// <summary>Exponential and logarithm with the same bits on every machine.</summary>
/// <remarks>
/// Made of +, -, x, / and square roots, which IEEE 754 (2019), section 5.4.1, rounds correctly everywhere, and of the bits of a number. The platform's own functions differ
/// between processors and C libraries in the last place. Errors are below 1 unit in the last place unless said otherwise. Not-a-number gives not-a-number.
/// </remarks>
internal static class Elementary
{
    // ln 2 in two parts: the first has 32 zero bits at its end, so that a whole number of up to 11 bits times it is exact.
    private const double Ln2High = 0.6931467056274414;
    private const double Ln2Low = 4.7493250390316726e-07;
    private const double Log2OfE = 1.4426950408889634;
    private const double SquareRootOfHalf = 0.7071067811865476;
    private const double TwoTo54 = 18014398509481984;
    private const int ExponentBias = 1023;
    private const int FractionBits = 52;
    private const double LargestExponent = 709.782712893384;
    private const double SmallestExponent = -745.1332191019412;

    /// <summary>e to a power.</summary>
    /// <param name="x">The power. Above 709.78 the result is infinite, below -745.13 it is 0.</param>
    /// <returns>The power of e.</returns>
    public static double Exp(double x)
    {
        if (double.IsNaN(x))
        {
            return x;
        }

        if (x > LargestExponent)
        {
            return double.PositiveInfinity;
        }

        if (x < SmallestExponent)
        {
            return 0;
        }

        double n = Math.Round(x * Log2OfE);
        double high = x - (n * Ln2High);
        double low = n * Ln2Low;
        double r = high - low;
        double lost = (high - r) - low;
        return Scale(1 + (r + ((r * r * ExpRest(r)) + lost)), (int)n);
    }

    /// <summary>e to a power, less 1; accurate for powers near 0, where the plain way loses its digits. Error below 4 units in the last place.</summary>
    /// <param name="x">The power.</param>
    /// <returns>The power of e, less 1.</returns>
    public static double ExpMinus1(double x) => Math.Abs(x) < 0.35 ? x + (x * x * ExpRest(x)) : Exp(x) - 1;

    /// <summary>The natural logarithm.</summary>
    /// <param name="x">The number. 0 gives minus infinity, a negative number not-a-number.</param>
    /// <returns>Its logarithm.</returns>
    public static double Log(double x)
    {
        if (double.IsNaN(x) || x < 0)
        {
            return double.NaN;
        }

        if (x == 0)
        {
            return double.NegativeInfinity;
        }

        if (double.IsPositiveInfinity(x))
        {
            return x;
        }

        (double fraction, int exponent) = Split(x);
        double f = fraction - 1;
        double s = f / (2 + f);
        double half = 0.5 * f * f;

        // ln(1+f) = 2 artanh(s) = f - f²/2 + s (f²/2 + 2 s²/3 + 2 s⁴/5 + ...), arranged so that the large parts are exact.
        return (exponent * Ln2High) - ((half - ((s * (half + LogRest(s * s))) + (exponent * Ln2Low))) - f);
    }

    /// <summary>The natural logarithm of 1 + x; accurate for x near 0. Error below 2 units in the last place.</summary>
    /// <param name="x">The number; -1 gives minus infinity.</param>
    /// <returns>The logarithm.</returns>
    public static double LogOnePlus(double x)
    {
        double u = 1 + x;
        if (u <= 0 || double.IsInfinity(u) || double.IsNaN(u))
        {
            return Log(u);
        }

        double lost = u > 2 ? 1 - (u - x) : x - (u - 1);
        return u == 1 ? x : Log(u) + (lost / u);
    }

    /// <summary>A positive number to any power. The relative error is about |y ln x| x 1.2e-16.</summary>
    /// <param name="x">The number; 0 or more.</param>
    /// <param name="y">The power.</param>
    /// <returns>The power.</returns>
    public static double Pow(double x, double y)
    {
        if (y == 0)
        {
            return 1;
        }

        return x == 0 ? (y > 0 ? 0 : double.PositiveInfinity) : Exp(y * Log(x));
    }

    /// <summary>exp(-c x²), without the loss of a rounded square in the exponent.</summary>
    /// <param name="x">The argument.</param>
    /// <param name="factor">c; a power of two.</param>
    /// <returns>0 to 1.</returns>
    public static double Gaussian(double x, double factor)
    {
        if (Math.Abs(x) > 40)
        {
            return Exp(-factor * x * x);
        }

        // The square of the first 26 bits of x is exact; the rest is small.
        double high = BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(x) & ~((1L << 27) - 1));
        return Exp(-factor * high * high) * Exp(-factor * (x - high) * (x + high));
    }

    /// <summary>(e^r - 1 - r) / r² for |r| of at most 0.35: the Taylor series; the first term left out is below 1e-17.</summary>
    private static double ExpRest(double r)
    {
        double sum = 0;
        for (int n = 14; n >= 3; n--)
        {
            sum = (1 + sum) * r / n;
        }

        return 0.5 * (1 + sum);
    }

    /// <summary>2 z/3 + 2 z²/5 + ... for z up to 0.0295; the first term left out is below 1e-19.</summary>
    private static double LogRest(double z)
    {
        double sum = 0;
        for (int n = 25; n >= 3; n -= 2)
        {
            sum = (sum + (2.0 / n)) * z;
        }

        return sum;
    }

    /// <summary>A positive finite number as a fraction between the roots of 1/2 and 2 times a power of two.</summary>
    private static (double Fraction, int Exponent) Split(double x)
    {
        int exponent = 0;
        if (x < 2.2250738585072014e-308)
        {
            x *= TwoTo54;
            exponent = -54;
        }

        long bits = BitConverter.DoubleToInt64Bits(x);
        exponent += (int)(bits >> FractionBits) - ExponentBias;
        double fraction = BitConverter.Int64BitsToDouble((bits & ((1L << FractionBits) - 1)) | ((long)ExponentBias << FractionBits));
        return fraction > 2 * SquareRootOfHalf ? (fraction / 2, exponent + 1) : (fraction, exponent);
    }

    private static double Scale(double value, int exponent)
    {
        // In two steps, so that neither power of two leaves the range of normal numbers.
        int half = exponent / 2;
        return value * PowerOfTwo(half) * PowerOfTwo(exponent - half);
    }

    private static double PowerOfTwo(int exponent) => BitConverter.Int64BitsToDouble((long)(exponent + ExponentBias) << FractionBits);
}
