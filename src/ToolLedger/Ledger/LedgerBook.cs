using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Custody;
using ToolLedger.Holds;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Records;

namespace ToolLedger.Ledger;

/// <summary>The record of a site: facts that are only ever added to, and what follows from them at any instant.</summary>
/// <remarks>
/// A fact handed in twice is an answer; another fact under its id is refused. What may not take effect is refused with every rule that speaks against it, and the refusal can be recorded. Facts that come from
/// elsewhere (read from a file, merged from another station) are all kept; those that dispute each other or take no effect are findings. The answers follow from the set of facts alone, never from the order in
/// which they came. An instant is looked up, not replayed; only <see cref="AsKnownAt"/> replays. Not thread-safe.
/// </remarks>
public sealed partial class LedgerBook
{
    /// <summary>The most entries of a ledger.</summary>
    public const int MaxEntryCount = EntryIntake<CustodyEntry>.MaxEntryCount;

    private readonly LedgerFacts facts = new();
    private readonly List<SignedReconciliation> signOffs = [];
    private readonly List<Amendment> amendments = [];
    private readonly HashSet<EntryId> corrected = [];
    private readonly List<(LedgerEntry Fact, Reason Why)> withoutEffect = [];
    private CustodyBook custody;
    private HoldBook holds;
    private ExposureMap? exposure;

    /// <summary>Makes a ledger.</summary>
    /// <param name="settings">By which rules it takes entries.</param>
    /// <param name="entries">Entries recorded before, in any order, also more than once; none by default.</param>
    /// <exception cref="ArgumentNullException">An argument or an entry is null.</exception>
    /// <exception cref="ArgumentException">There are more than 10,000,000 entries.</exception>
    public LedgerBook(LedgerSettings settings, params IEnumerable<LedgerEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(entries);
        Settings = settings;
        foreach (LedgerEntry entry in entries)
        {
            ArgumentNullException.ThrowIfNull(entry, nameof(entries));
            facts.Add(entry);
        }

        if (facts.Count > MaxEntryCount)
        {
            throw new ArgumentException("A ledger holds at most 10,000,000 entries.", nameof(entries));
        }

        List<CustodyEntry> ofCustody = [];
        List<HoldEntry> ofHolds = [];
        foreach (RecordEntry content in facts.Effective(withoutEffect))
        {
            Sort(content, ofCustody, ofHolds);
        }

        SortSigned();
        custody = BookOf(ofCustody);
        holds = new HoldBook(settings.Holds, settings.Custody.Roster, settings.Kits, MapNow, ofHolds);
    }

    /// <summary>By which rules it takes entries.</summary>
    public LedgerSettings Settings { get; }

    /// <summary>How many different facts it holds.</summary>
    public int Count => facts.Count;

    /// <summary>Every entry, by the time of recording, then by id. What it costs grows with their number.</summary>
    public IReadOnlyList<LedgerEntry> Entries => [.. facts.All];

    /// <summary>SHA-256 over the digests of all entries, whatever their order; two ledgers of the same entries have the same.</summary>
    public Digest Digest => Digest.Of(System.Text.Encoding.ASCII.GetBytes(string.Join('\n', facts.All.Select(static entry => entry.Digest.ToString()).Order(StringComparer.Ordinal))));

    /// <summary>What follows from all entries; to be asked for again after each.</summary>
    public LedgerState Now => new(custody.Live, holds.Live, MapNow(), signOffs, amendments, Findings());

    /// <summary>The entry of an id.</summary>
    /// <param name="id">The id.</param>
    /// <returns>The entry; null if there is none. Of several in dispute the first by digest.</returns>
    public LedgerEntry? Find(EntryId id) => facts.Find(id);

    /// <summary>Hands in a fact.</summary>
    /// <param name="content">The fact.</param>
    /// <param name="recordedAt">When it is recorded.</param>
    /// <param name="issues">Every rule that speaks against it; empty unless it was refused or its id is taken.</param>
    /// <param name="station">Where it is recorded; the default value means "not stated".</param>
    /// <returns>What became of it.</returns>
    /// <exception cref="ArgumentNullException">The fact is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The year is outside 1970 to 2999.</exception>
    public AppendOutcome Append(RecordEntry content, DateTimeOffset recordedAt, out IReadOnlyList<RecordIssue> issues, StationId station = default)
    {
        var entry = new LedgerEntry(content, recordedAt, station);
        issues = [];
        if (facts.Find(content.Id) is { } known)
        {
            if (facts.FindAll(content.Id).Any(one => one.ContentDigest == entry.ContentDigest))
            {
                return AppendOutcome.AlreadyThere;
            }

            issues = [new RecordIssue("$.id", new Reason(LedgerRules.SameIdOtherContent,
                ("id", content.Id.Value), ("kind", known.Kind), ("by", known.Actor.Value), ("at", RecordTime.ToText(known.OccurredAt))))];
            return AppendOutcome.SameIdOtherContent;
        }

        issues = WhyNot(entry) is { } why ? [why] : Take(content);
        if (issues.Count > 0)
        {
            return AppendOutcome.Refused;
        }

        facts.Add(entry);
        return AppendOutcome.Appended;
    }

    /// <summary>The ledger that holds the entries of both: the same whichever is merged into which, and however often.</summary>
    /// <param name="other">The other ledger.</param>
    /// <returns>A new ledger under the settings of this one.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public LedgerBook Merge(LedgerBook other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new LedgerBook(Settings, facts.All.Concat(other.facts.All));
    }

    /// <summary>What followed from the entries that had been recorded by an instant: what was known then. This replays.</summary>
    /// <param name="recordedBy">The instant.</param>
    /// <returns>The state of a ledger of those entries.</returns>
    public LedgerState AsKnownAt(DateTimeOffset recordedBy) => new LedgerBook(Settings, facts.All.Where(entry => entry.RecordedAt <= recordedBy)).Now;

    /// <summary>The entries that happened in a stretch of time, for keeping or handing over; the record itself is not changed.</summary>
    /// <param name="from">From when on, that instant included.</param>
    /// <param name="until">Until when, that instant excluded.</param>
    /// <returns>The entries by the time of recording, then by id; with every correction and amendment of one of them, whenever made.</returns>
    public IReadOnlyList<LedgerEntry> Between(DateTimeOffset from, DateTimeOffset until)
    {
        LedgerEntry[] all = [.. facts.All];
        HashSet<EntryId> inside = [.. all.Where(entry => entry.OccurredAt >= from && entry.OccurredAt < until).Select(static entry => entry.Id)];
        return [.. all.Where(entry => inside.Contains(entry.Id) || (entry.Content switch
        {
            Amendment amendment => inside.Contains(amendment.Amends),
            EntryCorrection correction => inside.Contains(correction.Corrects),
            _ => false,
        }))];
    }

    private ExposureMap MapNow() => exposure ??= new ExposureMap(custody.Live, signOffs.SelectMany(static signOff => signOff.Accountings), Settings.Holds.SightingEndsExposureOnly)
    {
        Disputed = [.. facts.Disputes.SelectMany(static dispute => dispute.Value).Select(static fact => fact.Content).OfType<ToolReceipt>()],
    };

    private CustodyBook BookOf(IEnumerable<CustodyEntry> entries) => new(Settings.Custody, Settings.Kits, entries.Where(entry => !corrected.Contains(entry.Id)));

    private void Sort(RecordEntry content, List<CustodyEntry> ofCustody, List<HoldEntry> ofHolds)
    {
        switch (content)
        {
            case CustodyEntry entry:
                ofCustody.Add(entry);
                break;
            case HoldEntry entry:
                ofHolds.Add(entry);
                break;
            case SignedReconciliation signOff:
                signOffs.Add(signOff);
                break;
            case Amendment amendment:
                amendments.Add(amendment);
                break;
            case EntryCorrection correction when IsCorrection(correction):
                corrected.Add(correction.Corrects);
                break;
        }
    }

    private void SortSigned()
    {
        signOffs.Sort(static (left, right) => Compare(left, right));
        amendments.Sort(static (left, right) => Compare(left, right));
    }

    private static int Compare(RecordEntry left, RecordEntry right)
    {
        int order = left.At.UtcTicks.CompareTo(right.At.UtcTicks);
        return order != 0 ? order : string.CompareOrdinal(left.Id.Value, right.Id.Value);
    }

    /// <summary>How many different facts it holds, and how many sign-offs are in effect.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => $"ledger of {CountText.Of(Count, "entry", "entries")}, {CountText.Of(signOffs.Count, "sign-off")} among them";
}
