using System;
using System.Collections.Generic;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>A line was accounted for by something that was seen, counted or read: what ends an exposure.</summary>
/// <remarks>Weak and silent lines, seals, notes and annotations make none. A signed receipt is found with the custody entries. Equal when all parts are. Immutable and thread-safe.</remarks>
public sealed record PositiveAccounting
{
    /// <summary>The kit under check.</summary>
    public required KitId Kit { get; init; }

    /// <summary>The number of the line as reports print it, such as 7.3.</summary>
    public required string Label { get; init; }

    /// <summary>The tool of the line; empty if it lists none.</summary>
    public ToolId Tool { get; init; }

    /// <summary>The instant of the oldest evidence that the line could not do without.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What it rests on.</summary>
    public required AccountingBasis Basis { get; init; }

    /// <summary>The signed reconciliation it was told in; empty if it was not signed.</summary>
    public EntryId SignedIn { get; init; }

    /// <summary>The positive accountings of a result.</summary>
    /// <param name="result">The result.</param>
    /// <returns>One for each line that rests on a sighting, a count or a read of known time, and on no receipt.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static IReadOnlyList<PositiveAccounting> Of(ReconciliationResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var list = new List<PositiveAccounting>();
        foreach (LineConclusion line in result.AllLines)
        {
            // On a receipt and seen here all the same: until a person has reconciled both stories nothing ends.
            if (line is { Basis: AccountingBasis.Sighted or AccountingBasis.Counted or AccountingBasis.Read, Evidence: { OldestAt: { } at, Receipt: null } })
            {
                list.Add(new PositiveAccounting { Kit = result.Manifest.Id, Label = line.Label, Tool = line.Line.Tool?.Id ?? default, At = at, Basis = line.Basis });
            }
        }

        return list;
    }
}
