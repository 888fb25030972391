using System.Collections.Generic;
using ToolLedger.Calibration;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The one conclusion a manifest line gets, with what it rests on and what would settle it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LineConclusion
{
    /// <summary>The line.</summary>
    public required ManifestLine Line { get; init; }

    /// <summary>Where it stands.</summary>
    public required LineState State { get; init; }

    /// <summary>The basis named first; <see cref="AccountingBasis.None"/> unless accounted.</summary>
    public required AccountingBasis Basis { get; init; }

    /// <summary>Further bases that also hold.</summary>
    public required IReadOnlyList<AccountingBasis> OtherBases { get; init; }

    /// <summary>Why, at least one.</summary>
    public required IReadOnlyList<Reason> Reasons { get; init; }

    /// <summary>What settles it fastest; null exactly when accounted.</summary>
    public required NextStep? Next { get; init; }

    /// <summary>The figures it rests on.</summary>
    public required LineEvidence Evidence { get; init; }

    /// <summary>Whether the tool is fit by calibration date at the as-of instant: a second answer that never changes the first. Null for lines without a tool.</summary>
    public CalibrationStatus? Calibration { get; init; }

    /// <summary>True where the read basis rests on the EPC alone, without a chip number.</summary>
    public bool IsEpcOnly { get; init; }

    /// <summary>True where the state shows a difference rather than silence: a count or pieces other than expected, a surplus, a conflict.</summary>
    public bool IsPositiveDifference { get; init; }

    /// <summary>True where the line is accounted for.</summary>
    public bool IsAccounted => State == LineState.Accounted;

    /// <summary>For example "line 7: not read".</summary>
    /// <returns>An English phrase.</returns>
    public override string ToString()
        => IsAccounted
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"line {Line.Number}: accounted for ({Words.Of(Basis)})")
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"line {Line.Number}: {Words.Of(State)}");
}
