using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Inventory;

namespace ToolLedger.Testing.Cases;

/// <summary>How cases are printed.</summary>
internal static class CaseText
{
    internal static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture);

    /// <summary>What people recorded beside sightings, counts, openings and signatures, one a line.</summary>
    internal static IEnumerable<string> Records(InventoryEntries entries) =>
    [
        .. entries.Annotations.Select(static one => Plain($"{one.SignedBy.By} annotated line {one.LineNumber} of {one.Kit} as {one.Kind}{(one.Kind == AnnotationKind.Shortage ? " by " + one.ShortBy : "")} at {Time(one.SignedBy.At)}{(one.Until is { } until ? ", until " + Time(until) : "")}")),
        .. entries.Uses.Select(static one => Plain($"{one.By} recorded for {one.Job}: {one.Used} {one.Unit} used and {one.Scrapped} scrapped of line {one.LineNumber} of {one.Kit} at {Time(one.At)}")),
        .. entries.Breakages.Select(static one => Plain($"{one.By} said that {one.Tool} broke into {one.Pieces?.ToString(CultureInfo.InvariantCulture) ?? "an unknown number of"} pieces at {Time(one.At)}")),
        .. entries.Reconstructions.Select(static one => Plain($"{one.SignedBy.By} and {one.Witness} established {one.Pieces} pieces of {one.Tool} at {Time(one.SignedBy.At)}")),
        .. entries.Joinings.Select(static one => Plain($"{one.By} said that {one.Parts} parts of line {one.LineNumber} of {one.Kit} make {one.Wholes} at {Time(one.At)}")),
        .. entries.UnlistedItems.Select(static one => Plain($"{one.By} reported {one.Description} gone at {Time(one.At)}")),
        .. entries.Seals.Select(static one => Plain($"{one.By} sealed {one.Kit} with {one.Number} at {Time(one.At)}, inventory of {Time(one.InventoriedAt)}")),
        .. entries.SealChecks.Select(static one => Plain($"{one.By} read seal {one.NumberRead} of {one.Kit}, {(one.IsIntact ? "intact" : "broken")}, at {Time(one.At)}")),
        .. entries.Substitutions.Select(static one => Plain($"{one.By} put {one.InPlace} in place on line {one.LineNumber} of {one.Kit} at {Time(one.At)}")),
    ];

    /// <summary>An entry of custody, with the tool of a receipt and whoever signed for it.</summary>
    internal static string Custody(CustodyEntry entry) => entry switch
    {
        ToolReceipt receipt => $"{entry} for {receipt.Tool}, {(receipt.ReceivedBy is { } by ? "signed for by " + by.By : "signed for by nobody")}",
        ReceiptClosure closure => $"{entry} of {closure.Receipt}",
        _ => entry.ToString(),
    };

    private static string Plain(FormattableString text) => FormattableString.Invariant(text);
}
