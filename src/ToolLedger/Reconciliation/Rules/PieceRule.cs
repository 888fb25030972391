using System;
using System.Globalization;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation.Rules;

/// <summary>A tag covers only the piece it is on: a tool of several pieces needs a piece count, and the pieces must match.</summary>
internal sealed class PieceRule : IReconciliationRule
{
    public string Name => "pieces";

    public string Version => "3";

    public string Settings => "";

    public Verdict Judge(in LineFacts facts)
    {
        if (facts.Line.Tool is not { } tool)
        {
            return Verdict.NoObjection;
        }

        ManifestLine line = facts.Line;
        int expected = Math.Max(tool.PieceCount, facts.PiecesEstablished);
        string expectedText = expected.ToString(CultureInfo.InvariantCulture);
        if (facts.IsPieceNumberUnknown || facts.Pieces is { Pieces: null })
        {
            var step = new Reason(PeopleReasons.StepReconstruct, ("what", line.Description));
            return Verdict.Withhold(
                LineState.Partial, [new Reason(ReconciliationReasons.PiecesUnknown)], new NextStep(NextStepKind.SearchShortage, step), isPositiveDifference: true);
        }

        if (facts.Pieces?.Pieces is not { } counted)
        {
            // A receipt covers the pieces that its receiver signed for.
            return expected > 1 && facts.Bases.Count > 0 && facts.Seal is null && facts.Receipt?.Pieces != expected
                ? Verdict.Withhold(LineState.Partial, new Reason(ReconciliationReasons.PiecesNotCounted, ("expected", expectedText)), CountPieces(expectedText))
                : Verdict.NoObjection;
        }

        if (counted < expected)
        {
            return Verdict.Withhold(
                LineState.Partial,
                [new Reason(ReconciliationReasons.PiecesShort, ("short", (expected - counted).ToString(CultureInfo.InvariantCulture)), ("expected", expectedText))],
                SearchPieces(line, expected - counted),
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

    private static NextStep CountPieces(string expected)
        => new(NextStepKind.CountPieces, new Reason(ReconciliationReasons.StepCountPieces, ("expected", expected)));

    /// <summary>The rules for a lost item cover a portion of a broken tool (US Air Force Instruction 21-101 of 16 January 2020, paragraph 8.9.2).</summary>
    private static NextStep SearchPieces(ManifestLine line, int missing) => new(
        NextStepKind.SearchShortage,
        new Reason(PeopleReasons.StepSearchPieces, ("short", missing.ToString(CultureInfo.InvariantCulture)), ("what", line.Description)));
}
