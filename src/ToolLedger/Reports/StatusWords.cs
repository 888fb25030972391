using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Holds;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;

namespace ToolLedger.Reports;

/// <summary>The words a status is printed with, and the words it has in JSON. A status is never told by colour or place alone.</summary>
internal static class StatusWords
{
    internal const string NotCounted = "NOT COUNTED";

    internal const string UnlistedAntenna = "UNLISTED ANTENNA";

    internal const string OnNoList = "ON NO LIST";

    /// <summary>A use of a tool that somebody has to review.</summary>
    internal const string InQuestion = "IN QUESTION";

    private const string NotSatisfied = "NOT SATISFIED";

    /// <summary>The printed words of more than one word: broken in two, a part of one could pass for another.</summary>
    internal static IReadOnlyList<string> Phrases { get; } =
    [
        .. Enum.GetValues<LineState>().Select(Print)
            .Concat(Enum.GetValues<KitState>().Select(Print))
            .Concat(Enum.GetValues<ReadExplanationKind>().Select(Print))
            .Concat(Enum.GetValues<CalibrationState>().Select(Print))
            .Concat([NotSatisfied, NotCounted, OnNoList, InQuestion, UnlistedAntenna, "NOT AFFECTED", "LEFT IN PLACE"])
            .Where(static phrase => phrase.Contains(' ', StringComparison.Ordinal))
            .Distinct(StringComparer.Ordinal)
            .OrderByDescending(static phrase => phrase.Length),
    ];

    internal static string Print(LineState state) => Loud(Words.Of(state));

    internal static string Print(KitState state) => Loud(Words.Of(state));

    internal static string Print(AccountingBasis basis) => Loud(Words.Of(basis));

    internal static string Print(ReadExplanationKind kind) => Loud(Words.Of(kind));

    internal static string Print(SessionState state) => Loud(Code(state).Replace('-', ' '));

    internal static string Print(CalibrationState state) => Loud(Code(state).Replace('-', ' '));

    internal static string Print(GateAnswer gate) => gate.IsSatisfied ? "SATISFIED" : NotSatisfied;

    internal static string Code(LineState state) => Hyphened(Words.Of(state));

    internal static string Code(KitState state) => Hyphened(Words.Of(state));

    internal static string Code(AccountingBasis basis) => basis == AccountingBasis.None ? "none" : Hyphened(Words.Of(basis));

    internal static string Code(ReadExplanationKind kind) => Hyphened(Words.Of(kind));

    internal static string Code(SessionState state) => state switch
    {
        SessionState.Valid => "valid",
        SessionState.Degraded => "degraded",
        _ => "invalid",
    };

    internal static string Code(CalibrationState state) => state switch
    {
        CalibrationState.NotRequired => "not-required",
        CalibrationState.Current => "current",
        CalibrationState.DueSoon => "due-soon",
        CalibrationState.Overdue => "overdue",
        CalibrationState.Limited => "limited",
        CalibrationState.Suspended => "suspended",
        CalibrationState.Rejected => "rejected",
        CalibrationState.Inactive => "inactive",
        _ => "unknown",
    };

    internal static string Code(FindingLevel level) => level switch
    {
        FindingLevel.Line => "line",
        FindingLevel.Kit => "kit",
        _ => "session",
    };

    internal static string Code(NextStepKind kind) => kind switch
    {
        NextStepKind.PresentAgain => "present-again",
        NextStepKind.SecondPass => "second-pass",
        NextStepKind.SightTool => "sight-tool",
        NextStepKind.CountItems => "count-items",
        NextStepKind.CountPieces => "count-pieces",
        NextStepKind.SearchShortage => "search-shortage",
        NextStepKind.ResolveSurplus => "resolve-surplus",
        NextStepKind.SettleIdentity => "settle-identity",
        NextStepKind.SettleSubKit => "settle-sub-kit",
        NextStepKind.HandInManifest => "hand-in-manifest",
        NextStepKind.LookInKit => "look-in-kit",
        _ => "restore-station",
    };

    internal static string Code(ExposureKind kind) => kind switch
    {
        ExposureKind.Visit => "visit",
        ExposureKind.Between => "between",
        ExposureKind.Stored => "stored",
        ExposureKind.Receipt => "receipt",
        _ => "said",
    };

    private static string Loud(string words) => words.ToUpperInvariant();

    private static string Hyphened(string words) => words.Replace(' ', '-');
}
