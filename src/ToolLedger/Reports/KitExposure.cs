using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Ledger;
using ToolLedger.Reconciliation;
using ToolLedger.Tools;

namespace ToolLedger.Reports;

/// <summary>What a ledger says of a kit as of its result: who answers, what its open lines were near, which holds stand. The text and the JSON form both tell this.</summary>
internal static class KitExposure
{
    /// <summary>The span of custody the kit is in; null if nobody ever signed for it.</summary>
    internal static CustodySpan? HolderOf(LedgerState known, ReconciliationResult result) =>
        known.Custody.HistoryOf(result.Manifest.Id, result.AsOf)[^1] is { From: var from } span && from > DateTimeOffset.MinValue ? span : null;

    /// <summary>The open lines in the order to chase them, each with what it was near since it was last accounted for.</summary>
    internal static IEnumerable<(string Label, Exposure Exposure)> OpenLines(LedgerState known, ReconciliationResult result) =>
        result.ChaseList.Select(line => (line.Label, known.Exposure.Of(result.Manifest.Id, line.Label, result.AsOf)));

    /// <summary>The holds about things of the kit: those that name it, and those of a tool on its lines: whoever declares a tool missing need not say of which kit it is.</summary>
    internal static IEnumerable<HoldStatus> Holds(LedgerState known, ReconciliationResult result) => known.Holds.HeldAt(result.AsOf)
        .Where(hold => hold.Declaration.Kit == result.Manifest.Id || IsOfKit(hold.Declaration.Tool, result));

    private static bool IsOfKit(ToolId tool, ReconciliationResult result) => !tool.IsEmpty && result.AllLines.Any(line => line.Line.Tool?.Id == tool);
}
