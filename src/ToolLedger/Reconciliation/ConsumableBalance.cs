using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The balance of a consumable line: issued = used + returned + scrapped + unexplained, all in the unit of the line.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class ConsumableBalance
{
    /// <summary>The unit of all figures.</summary>
    public required Unit Unit { get; init; }

    /// <summary>What the kit was issued with: the quantity of the manifest less what is known to be short.</summary>
    public required decimal Issued { get; init; }

    /// <summary>What the job records that count say was used.</summary>
    public decimal Used { get; init; }

    /// <summary>What was counted in the kit.</summary>
    public required decimal Returned { get; init; }

    /// <summary>What the job records that count say was scrapped.</summary>
    public decimal Scrapped { get; init; }

    /// <summary>The number of jobs whose records count.</summary>
    public int JobCount { get; init; }

    /// <summary>What is left of the issue: above 0 short, below 0 more than was issued.</summary>
    public decimal Unexplained => Issued - Used - Returned - Scrapped;
}
