using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>A tag covers only the piece it is on: a tool of several pieces needs a piece count, and the pieces must match.</summary>
internal sealed class PieceRule : IReconciliationRule
{
    public string Name => "pieces";

    public string Version => "1";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        if (facts.Line.Tool is not { } tool)
        {
            return Verdict.NoObjection;
        }

        ManifestLine line = facts.Line;
        int expected = tool.PieceCount;
        string expectedText = expected.ToString(CultureInfo.InvariantCulture);
        if (facts.Pieces is not { } pieces)
        {
            return expected > 1 && facts.Bases.Count > 0
                ? Verdict.Withhold(LineState.Partial, new Reason(ReconciliationReasons.PiecesNotCounted, ("expected", expectedText)), Steps.CountPieces(line))
                : Verdict.NoObjection;
        }

        if (pieces.Pieces is not { } counted)
        {
            return Verdict.Withhold(LineState.Partial, [new Reason(ReconciliationReasons.PiecesUnknown)], Steps.SearchShortage(line), isPositiveDifference: true);
        }

        if (counted < expected)
        {
            return Verdict.Withhold(
                LineState.Partial,
                [new Reason(ReconciliationReasons.PiecesShort, ("short", (expected - counted).ToString(CultureInfo.InvariantCulture)), ("expected", expectedText))],
                Steps.SearchShortage(line),
                isPositiveDifference: true);
        }

        return counted > expected
            ? Verdict.Withhold(
                LineState.Conflict,
                [new Reason(ReconciliationReasons.PiecesOver, ("over", (counted - expected).ToString(CultureInfo.InvariantCulture)), ("expected", expectedText))],
                Steps.ResolveSurplus(line),
                isPositiveDifference: true)
            : Verdict.NoObjection;
    }
}
