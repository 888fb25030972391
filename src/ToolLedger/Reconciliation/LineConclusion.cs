using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The one conclusion a manifest line gets, with what it rests on and what would settle it.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class LineConclusion
{
    private readonly PlainDetails? plain;
    private readonly int index;
    private LineParts? parts;

    /// <summary>Makes a conclusion, to be filled by an object initializer.</summary>
    public LineConclusion()
    {
    }

    // Everything but the state is worked out when asked for, which the compiler cannot see.
#pragma warning disable CS8618
    [SetsRequiredMembers]
    internal LineConclusion(ManifestLine line, PlainDetails plain, int index)
#pragma warning restore CS8618
    {
        Line = line;
        State = plain.StateOf(index);
        Basis = State == LineState.Accounted ? AccountingBasis.Read : AccountingBasis.None;
        this.plain = plain;
        this.index = index;
    }

    /// <summary>The line; where a substitution is recorded, with the tool that is in place.</summary>
    public required ManifestLine Line { get; init; }

    /// <summary>The numbers of the sub-kit lines it is inside, outermost first; empty (the default) for a line of the kit's own manifest.</summary>
    public IReadOnlyList<int> Within { get => parts?.Within ?? []; init => Parts.Within = value; }

    /// <summary>The number as reports print it: 7 for a line of the kit, 7.3 for line 3 of the sub-kit on line 7.</summary>
    public string Label => LabelOf(Within, Line.Number);

    /// <summary>For a sub-kit, one conclusion for every line of its manifest, in line order; otherwise empty (the default).</summary>
    public IReadOnlyList<LineConclusion> Inner { get => parts?.Inner ?? []; init => Parts.Inner = value; }

    /// <summary>Where it stands.</summary>
    public required LineState State { get; init; }

    /// <summary>The basis named first; <see cref="AccountingBasis.None"/> unless accounted.</summary>
    public required AccountingBasis Basis { get; init; }

    /// <summary>Further bases that also hold.</summary>
    public required IReadOnlyList<AccountingBasis> OtherBases { get => parts?.OtherBases ?? []; init => Parts.OtherBases = value; }

    /// <summary>Why, at least one.</summary>
    public required IReadOnlyList<Reason> Reasons { get => plain?.ReasonsOf(index) ?? Parts.Reasons; init => Parts.Reasons = value; }

    /// <summary>What settles it fastest; null exactly when accounted.</summary>
    public required NextStep? Next { get => plain is null ? parts?.Next : plain.NextOf(index); init => Parts.Next = value; }

    /// <summary>The figures it rests on.</summary>
    public required LineEvidence Evidence { get => plain?.LineAt(index).Evidence ?? Parts.Evidence!; init => Parts.Evidence = value; }

    /// <summary>Whether the tool is fit by calibration date at the as-of instant: a second answer that never changes the first. Null for lines without a tool.</summary>
    public CalibrationStatus? Calibration { get => plain is null ? parts?.Calibration : plain.LineAt(index).Calibration; init => Parts.Calibration = value; }

    /// <summary>True where the read basis rests on the EPC alone, without a chip number.</summary>
    public bool IsEpcOnly { get => plain is null ? parts is { IsEpcOnly: true } : plain.LineAt(index).IsEpcOnly; init => Parts.IsEpcOnly = value; }

    /// <summary>True where the state shows a difference rather than silence: a count or pieces other than expected, a surplus, a conflict.</summary>
    public bool IsPositiveDifference { get => parts is { IsPositiveDifference: true }; init => Parts.IsPositiveDifference = value; }

    /// <summary>True where the line is accounted for.</summary>
    public bool IsAccounted => State == LineState.Accounted;

    /// <summary>For example "line 7: not read".</summary>
    /// <returns>An English phrase.</returns>
    public override string ToString()
        => IsAccounted
            ? $"line {Label}: accounted for ({Words.Of(Basis)})"
            : $"line {Label}: {Words.Of(State)}";

    private LineParts Parts => parts ??= new LineParts();

    /// <summary>The number of the line of the kit's own manifest that it is, or is inside of.</summary>
    internal int OuterNumber => Within.Count > 0 ? Within[0] : Line.Number;

    /// <summary>This line and, behind it, all lines inside.</summary>
    internal IEnumerable<LineConclusion> WithInner()
    {
        yield return this;
        foreach (LineConclusion inner in Inner)
        {
            foreach (LineConclusion deeper in inner.WithInner())
            {
                yield return deeper;
            }
        }
    }

    internal static string LabelOf(IReadOnlyList<int> within, int number)
        => within.Count == 0 ? Text(number) : string.Join('.', within.Append(number).Select(Text));

    internal static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
