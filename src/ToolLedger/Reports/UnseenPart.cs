using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The part of a line that no reader can see: what is untagged, inside a container, or a piece beside the tagged one.</summary>
internal sealed class UnseenPart
{
    private static readonly ReasonKind[] ByPeople = [ReconciliationReasons.Sighted, ReconciliationReasons.Counted, ReconciliationReasons.PiecesCounted];

    private UnseenPart(LineConclusion conclusion, Reason what)
    {
        Conclusion = conclusion;
        What = what;

        // A sighting shows the tool but not that its pieces are all there.
        bool needsCount = conclusion.Line is not (ToolLine or SubKitLine) || conclusion.Line.Tool is { PieceCount: > 1 };
        Said = [.. conclusion.Reasons.Where(reason => ByPeople.Contains(reason.Kind) && !(needsCount && reason.Kind == ReconciliationReasons.Sighted))];
    }

    internal LineConclusion Conclusion { get; }

    /// <summary>What no reader can see.</summary>
    internal Reason What { get; }

    /// <summary>Who counted or sighted it; empty if nobody did.</summary>
    internal IReadOnlyList<Reason> Said { get; }

    /// <summary>The persons who counted or sighted it, by name of the value their statements carry.</summary>
    internal IEnumerable<string> Persons => Said
        .SelectMany(static reason => reason.Values)
        .Where(static pair => string.Equals(pair.Key, "by", System.StringComparison.Ordinal))
        .Select(static pair => pair.Value)
        .Distinct(System.StringComparer.Ordinal);

    /// <summary>The parts of a kit that no reader can see, in line order.</summary>
    internal static List<UnseenPart> Of(ReconciliationResult result) =>
        [.. result.AllLines.Select(static line => Describe(line) is { } what ? new UnseenPart(line, what) : null).OfType<UnseenPart>()];

    private static Reason? Describe(LineConclusion conclusion)
    {
        return conclusion.Line switch
        {
            SubKitLine { Case: null } => null,
            SubKitLine { Case: { PieceCount: > 1 } part } => new Reason(ReportSentences.UnseenPieces, ("what", ReportVoice.What(part)), ("total", Text(part.PieceCount))),
            SubKitLine when conclusion.Evidence.LiveTagCount > 0 => null,
            SubKitLine { Case: { } part } => new Reason(ReportSentences.UnseenNoTag, ("what", ReportVoice.What(part))),
            SetLine set => new Reason(ReportSentences.UnseenContents, ("contents", set.Contents), ("container", ReportVoice.What(set.Container))),
            ToolLine { Tool: { PieceCount: > 1 } tool } => new Reason(ReportSentences.UnseenPieces, ("what", ReportVoice.What(tool)), ("total", Text(tool.PieceCount))),
            ToolLine when conclusion.Evidence.LiveTagCount > 0 => null,
            ToolLine { Tool: { } tool } => new Reason(ReportSentences.UnseenNoTag, ("what", ReportVoice.What(tool))),
            _ => new Reason(ReportSentences.UnseenAll, ("what", conclusion.Line.Description)),
        };
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
