using System;
using System.Collections.Generic;
using ToolLedger.Identifiers;
using ToolLedger.Tools;

namespace ToolLedger.Reads;

/// <summary>What a session has to say about one tag: a set of looks and the extremes of time and strength.</summary>
/// <remarks>
/// <para>Everything but the three counts of delivered reports is a function of the set of reads: their order, and the same
/// report delivered again, change nothing.</para>
/// <para>Immutable and thread-safe.</para>
/// </remarks>
public sealed class TagEvidence
{
    private readonly LookCell[] _cells;
    private readonly Tid[] _tids;

    // Trusted: cells in order of pass and antenna, TIDs in order of their bits.
    internal TagEvidence(TagId tag, LookCell[] cells, Tid[] tids)
    {
        Tag = tag;
        _cells = cells;
        _tids = tids;
        Span<byte> seen = stackalloc byte[256];
        seen.Clear();
        int antennas = 0;
        int pass = 0;
        foreach (LookCell cell in cells)
        {
            LookCount += cell.LookCount;
            PassCount += cell.Pass != pass ? 1 : 0;
            pass = cell.Pass;
            antennas += cell.Antenna.IsKnown && seen[cell.Antenna.Number] == 0 ? 1 : 0;
            seen[cell.Antenna.Number] = 1;
        }

        // A look on an unknown antenna was made on some antenna, perhaps on one already counted.
        AntennaCount = Math.Max(antennas, Math.Min(1, cells.Length));
    }

    /// <summary>The tag.</summary>
    public TagId Tag { get; }

    /// <summary>The looks by pass and antenna, in that order; empty when no read lay in the presentation.</summary>
    public IReadOnlyList<LookCell> Cells => Array.AsReadOnly(_cells);

    /// <summary>The same without a list of its own.</summary>
    internal ReadOnlySpan<LookCell> CellSpan => _cells;

    /// <summary>The earliest instant seen in the presentation, corrected, in UTC; null when there is none.</summary>
    public DateTimeOffset? FirstSeen { get; internal init; }

    /// <summary>The latest instant seen in the presentation, corrected, in UTC; null when there is none.</summary>
    public DateTimeOffset? LastSeen { get; internal init; }

    /// <summary>The strongest signal in the presentation; null when none was reported.</summary>
    public Rssi? Strongest { get; internal init; }

    /// <summary>The weakest signal in the presentation; null when none was reported.</summary>
    public Rssi? Weakest { get; internal init; }

    /// <summary>The different TIDs read in the presentation, the smallest two in order of their hexadecimal digits.</summary>
    public IReadOnlyList<Tid> Tids => Array.AsReadOnly(_tids);

    /// <summary>The same without a list of its own.</summary>
    internal ReadOnlySpan<Tid> TidSpan => _tids;

    /// <summary>Whether there were more than two different TIDs.</summary>
    public bool HasMoreTids { get; internal init; }

    /// <summary>Whether the tag was heard inside the presentation: by any report, one taken for a repeat too, since order must not decide what is known.</summary>
    internal bool IsHeard => FirstSeen is not null;

    /// <summary>Reports taken as evidence. No conclusion may depend on it: look at <see cref="LookCount"/>.</summary>
    public long AcceptedCount { get; internal init; }

    /// <summary>Reports that were recognised as repeats.</summary>
    public long RepeatCount { get; internal init; }

    /// <summary>Reports outside the presentation.</summary>
    public long OutsideCount { get; internal init; }

    /// <summary>The number of looks: the sum over <see cref="Cells"/>.</summary>
    public int LookCount { get; }

    /// <summary>The number of different antennas with a look; an unknown one counts only when no other does.</summary>
    public int AntennaCount { get; }

    /// <summary>The number of different passes with a look.</summary>
    public int PassCount { get; }

    /// <summary>The tag, and over how many antennas and passes its looks are spread.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant($"{Tag}: looks {LookCount}, antennas {AntennaCount}, passes {PassCount}");
}
