namespace ToolLedger.Presence;

/// <summary>How well tags of a kind answer: the share of looks with a read is drawn for each pass from a beta distribution.</summary>
/// <param name="A">The weight of reads; 0.001 to 1,000,000, at most 9 decimals.</param>
/// <param name="B">The weight of looks without a read; 0.001 to 1,000,000, at most 9 decimals.</param>
public readonly record struct BetaRate(decimal A, decimal B)
{
    /// <summary>The smallest parameter.</summary>
    public const decimal MinParameter = 0.001m;

    /// <summary>The largest parameter.</summary>
    public const decimal MaxParameter = 1_000_000;

    /// <summary>The mean share of looks with a read; 0 to 1. Not a number for the default value, which is no rate.</summary>
    public double Mean => (double)A / ((double)A + (double)B);

    internal bool IsInRange => A is >= MinParameter and <= MaxParameter && B is >= MinParameter and <= MaxParameter;
}
