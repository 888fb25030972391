using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Custody;

/// <summary>Who answers for every kit and tool, at any instant, with no gap and no overlap: what the entries that took effect say.</summary>
/// <remarks>
/// Entries take effect in the order of their times, whatever order they are given in; within one instant what ends comes before what begins. An entry that may not take effect
/// is listed under <see cref="Refused"/> with every rule that speaks against it, and whoever answered before answers on. So two stations that hold the same
/// entries answer alike, and an entry never changes the answer about an instant before its own. What nobody signed out is with the tool room. Immutable and thread-safe, unless it is
/// the <see cref="CustodyBook.Live"/> view of a book.
/// </remarks>
public sealed partial class CustodyRegister
{
    private readonly CustodyState state;
    private readonly EntryReplay<CustodyEntry> replay;

    /// <summary>Makes a register.</summary>
    /// <param name="policy">Who may sign for what.</param>
    /// <param name="kits">The manifests of all kits.</param>
    /// <param name="log">What was recorded.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public CustodyRegister(CustodyPolicy policy, KitRegister kits, CustodyLog log)
    {
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(kits);
        ArgumentNullException.ThrowIfNull(log);
        state = new CustodyState(policy, kits);
        replay = CustodyReplay.Of(state, log.Entries);
    }

    internal CustodyRegister(CustodyState state, EntryReplay<CustodyEntry> replay)
    {
        this.state = state;
        this.replay = replay;
    }

    /// <summary>A register without entries: everything is with the tool room of the default policy.</summary>
    public static CustodyRegister Empty { get; } = new(CustodyPolicy.Default, KitRegister.Empty, CustodyLog.Empty);

    /// <summary>The policy that decided.</summary>
    public CustodyPolicy Policy => state.Policy;

    /// <summary>The manifests that were used.</summary>
    public KitRegister Kits => state.Kits;

    /// <summary>The entries that took effect, in the order they did.</summary>
    public IReadOnlyList<CustodyEntry> Entries => replay.Applied;

    /// <summary>The entries that took no effect, each with every rule that speaks against it, in the order they were tried.</summary>
    public IReadOnlyList<RefusedEntry> Refused => replay.Refused;

    /// <summary>True if nothing was recorded.</summary>
    public bool IsEmpty => Entries.Count == 0 && Refused.Count == 0;

    /// <summary>SHA-256 over the digests of all entries, those that took no effect too; computed at each call.</summary>
    public Digest Digest => EntryDigests.Of([.. Entries, .. Refused.Select(static one => one.Entry)]);

    /// <summary>Who answers for a kit at an instant.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>Its user, the user of a kit it is inside of, or the place it is kept.</returns>
    public CustodyHolder HolderOf(KitId kit, DateTimeOffset asOf) => state.HolderOf(kit, asOf).Holder;

    /// <summary>Who answers for a tool at an instant: whoever signed a receipt for it, or else whoever answers for its kit, or else the tool room.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>A person, or a place.</returns>
    public CustodyHolder HolderOf(ToolId tool, DateTimeOffset asOf)
    {
        if (state.ReceiptOf(tool, asOf) is { } on)
        {
            return HolderOf(on.Receipt);
        }

        return state.KitOf(tool, asOf) is { } kit ? HolderOf(kit, asOf) : CustodyHolder.Of(Policy.ToolRoom);
    }

    /// <summary>The issue under which a kit is out at an instant.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The issue, or null if the kit is not signed out by itself.</returns>
    public KitIssue? IssueOf(KitId kit, DateTimeOffset asOf) => state.TenureOf(kit, asOf)?.Issue;

    /// <summary>The receipt a tool is on at an instant.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>The receipt, or null.</returns>
    public ToolReceipt? ReceiptOf(ToolId tool, DateTimeOffset asOf) => state.ReceiptOf(tool, asOf)?.Receipt;

    /// <summary>Every receipt a tool was ever on up to an instant, with its closure if it has one by then, in time order.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>Pairs of receipt and closure.</returns>
    public IReadOnlyList<(ToolReceipt Receipt, ReceiptClosure? Closure)> ReceiptsOf(ToolId tool, DateTimeOffset asOf) =>
        [.. state.ReceiptsOf(tool).TakeWhile(one => one.Receipt.At <= asOf).Select(one => (one.Receipt, one.ClosedAt <= asOf ? one.Closure : null))];

    /// <summary>Who answered for a kit, from the first record on up to an instant.</summary>
    /// <param name="kit">The kit.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>Spans in time order, without gap and without overlap; the last goes on. Kits around it are not looked at.</returns>
    public IReadOnlyList<CustodySpan> HistoryOf(KitId kit, DateTimeOffset asOf)
    {
        var spans = new List<CustodySpan> { new() { Holder = CustodyHolder.Of(Policy.ToolRoom), From = DateTimeOffset.MinValue } };
        foreach (KitTenure tenure in state.TenuresOf(kit).TakeWhile(one => one.From <= asOf))
        {
            CustodyHistory.Append(spans, new CustodySpan { Holder = tenure.Holder, From = tenure.From, Entry = tenure.Entry, Due = tenure.Due });
        }

        return spans;
    }

    /// <summary>Who answered for a tool, from the first record on up to an instant.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="asOf">The instant.</param>
    /// <returns>Spans in time order, without gap and without overlap; the last goes on.</returns>
    public IReadOnlyList<CustodySpan> HistoryOf(ToolId tool, DateTimeOffset asOf) => CustodyHistory.Of(this, state, tool, asOf);

    internal KitId? KitOf(ToolId tool, DateTimeOffset asOf) => state.KitOf(tool, asOf);

    internal IEnumerable<KitId> KitsListing(ToolId tool, DateTimeOffset from, DateTimeOffset to) => state.KitsListing(tool, from, to);

    internal IReadOnlyList<KitId> WithOuter(IEnumerable<KitId> inner, DateTimeOffset from, DateTimeOffset to) => state.WithOuter(inner, from, to);

    /// <summary>The tenure under which a kit is, its own or that of a kit around it; null while neither was ever signed out.</summary>
    internal KitTenure? TenureOf(KitId kit, DateTimeOffset asOf) => state.HolderOf(kit, asOf).Tenure;

    /// <summary>The kit's own tenures in time order, whoever is around it.</summary>
    internal IReadOnlyList<KitTenure> TenuresOf(KitId kit) => state.TenuresOf(kit);

    internal bool IsMentioned(KitId kit) => state.IsMentioned(kit);

    internal KitManifest? ManifestOf(KitId kit, DateTimeOffset asOf) => state.ManifestOf(kit, asOf);

    internal static CustodyHolder HolderOf(ToolReceipt receipt) =>
        receipt is LaboratoryReceipt ? CustodyHolder.Of(receipt.Where) : CustodyHolder.Of(receipt.ReceivedBy!.By);
}
