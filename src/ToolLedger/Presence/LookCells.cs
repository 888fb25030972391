using System;
using System.Collections.Generic;
using ToolLedger.Statistics;

namespace ToolLedger.Presence;

/// <summary>Passes counted by looks and reads, with weights, and the beta rate they are likeliest under.</summary>
internal sealed class LookCells
{
    private const int MaxSteps = 60;
    private const double Smallest = 1e-3;
    private const double Largest = 1e5;

    private readonly Dictionary<(int Looks, int Reads), double> cells = [];
    private KeyValuePair<(int Looks, int Reads), double>[]? ordered;
    private int longest;

    public double Weight { get; private set; }

    /// <summary>The cells in an order of their own: sums of weights must not depend on the order in which sessions were added.</summary>
    public IReadOnlyList<KeyValuePair<(int Looks, int Reads), double>> All => ordered ??= Ordered();

    public void Add(int looks, int reads, double weight)
    {
        System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(cells, (looks, reads), out _) += weight;
        longest = Math.Max(longest, looks);
        Weight += weight;
        ordered = null;
    }

    /// <summary>The rate of the largest likelihood with a prior of Jeffreys' type: half a read and half a miss, and concentrations that count less the larger they are.</summary>
    /// <param name="silentWeight">What is left of the weight of a silent pass of so many looks.</param>
    /// <param name="start">Where to begin.</param>
    /// <param name="work">What may be spent, of which is taken what was; at 0 or below the way up ends where it is.</param>
    public (double A, double B) Fit(Func<int, double> silentWeight, (double A, double B) start, ref long work)
    {
        // The logarithm of the likelihood is a sum of ln(a + j), ln(b + j) and -ln(a + b + j) over how many passes went beyond j.
        double[] reads = new double[longest + 1], misses = new double[longest + 1], looks = new double[longest + 1];
        foreach (((int n, int k), double weight) in All)
        {
            double counted = k == 0 ? weight * silentWeight(n) : weight;
            if (k > 0)
            {
                reads[k - 1] += counted;
            }

            if (n > k)
            {
                misses[n - k - 1] += counted;
            }

            if (n > 0)
            {
                looks[n - 1] += counted;
            }
        }

        for (int j = longest - 1; j >= 0; j--)
        {
            reads[j] += reads[j + 1];
            misses[j] += misses[j + 1];
            looks[j] += looks[j + 1];
        }

        var climb = new Climb(reads, misses, looks, work);
        (double A, double B) found = climb.From(Math.Clamp(start.A, Smallest, Largest), Math.Clamp(start.B, Smallest, Largest));
        work = climb.Left - longest - cells.Count;
        return found;
    }

    private KeyValuePair<(int Looks, int Reads), double>[] Ordered()
    {
        KeyValuePair<(int Looks, int Reads), double>[] all = [.. cells];
        Array.Sort(all, static (left, right) => left.Key.CompareTo(right.Key));
        return all;
    }

    /// <summary>The way up to the largest likelihood, by Newton's rule in ln a and ln b, where no step leaves the positive numbers.</summary>
    private sealed class Climb(double[] reads, double[] misses, double[] looks, long work)
    {
        private double a, b, value;

        /// <summary>What is left to be spent: one a look, each time all are summed.</summary>
        public long Left { get; private set; } = work;

        public (double A, double B) From(double startA, double startB)
        {
            (a, b, value) = (startA, startB, Value(startA, startB));
            for (int step = 0; step < MaxSteps && Left > 0; step++)
            {
                Slopes(out double da, out double db, out double daa, out double dab, out double dbb);
                (double ga, double gb) = (a * da, b * db);
                (double haa, double hab, double hbb) = ((a * a * daa) + ga, a * b * dab, (b * b * dbb) + gb);
                double determinant = (haa * hbb) - (hab * hab);
                bool isPeak = haa < 0 && determinant > 0;
                double sa = isPeak ? -((hbb * ga) - (hab * gb)) / determinant : ga / (Math.Abs(haa) + Math.Abs(ga) + 1e-9);
                double sb = isPeak ? -((haa * gb) - (hab * ga)) / determinant : gb / (Math.Abs(hbb) + Math.Abs(gb) + 1e-9);
                if (!TryStep(sa, sb) || Math.Max(Math.Abs(sa), Math.Abs(sb)) < 1e-9)
                {
                    break;
                }
            }

            return (a, b);
        }

        private bool TryStep(double sa, double sb)
        {
            double size = Math.Max(Math.Abs(sa), Math.Abs(sb));
            double part = size > 2 ? 2 / size : 1;
            for (int halving = 0; halving < 40 && Left > 0; halving++, part /= 2)
            {
                double nextA = Math.Clamp(a * Elementary.Exp(part * sa), Smallest, Largest), nextB = Math.Clamp(b * Elementary.Exp(part * sb), Smallest, Largest);
                double next = Value(nextA, nextB);
                if (next > value)
                {
                    (a, b, value) = (nextA, nextB, next);
                    return true;
                }
            }

            return false;
        }

        private double Value(double a, double b)
        {
            Left -= looks.Length;
            double sum = (0.5 * Elementary.Log(a)) + (0.5 * Elementary.Log(b)) - Elementary.Log(a + b) - Elementary.Log(1 + a + b);
            for (int j = 0; j < looks.Length && looks[j] > 0; j++)
            {
                sum += (reads[j] > 0 ? reads[j] * Elementary.Log(a + j) : 0) + (misses[j] > 0 ? misses[j] * Elementary.Log(b + j) : 0) - (looks[j] * Elementary.Log(a + b + j));
            }

            return sum;
        }

        private void Slopes(out double da, out double db, out double daa, out double dab, out double dbb)
        {
            Left -= looks.Length;
            double s = a + b;
            double common = (-1 / s) - (1 / (1 + s)), curve = (1 / (s * s)) + (1 / ((1 + s) * (1 + s)));
            (da, db) = (0.5 / a, 0.5 / b);
            (daa, dbb) = (-0.5 / (a * a), -0.5 / (b * b));
            for (int j = 0; j < looks.Length && looks[j] > 0; j++)
            {
                (double ra, double rb, double rs) = (1 / (a + j), 1 / (b + j), 1 / (s + j));
                da += reads[j] * ra;
                daa -= reads[j] * ra * ra;
                db += misses[j] * rb;
                dbb -= misses[j] * rb * rb;
                common -= looks[j] * rs;
                curve += looks[j] * rs * rs;
            }

            (da, db, daa, dbb, dab) = (da + common, db + common, daa + curve, dbb + curve, curve);
        }
    }
}
