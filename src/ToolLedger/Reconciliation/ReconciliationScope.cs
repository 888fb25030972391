using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>What one call of the reconciler shares between kits: sessions and people's evidence looked up once.</summary>
internal sealed class ReconciliationScope
{
    private readonly Dictionary<ReadSession, SessionReading> readings = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<ReadSession, IReadOnlyList<Finding>> sessionFindings = new(ReferenceEqualityComparer.Instance);
    private readonly Lazy<Digest> hintsDigest;
    private readonly Lazy<Digest> custodyDigest;
    private readonly Lazy<ILookup<TagId, ProximityNote>> notes;
    private readonly Lazy<SubstitutionIndex>? substitutions;
    private readonly Lazy<IReadOnlyList<(ToolId Tool, decimal Share)>> sharesOfNoManifest;

    // Results of one call explain their reads later, perhaps on several threads, and share this scope.
    private readonly Lock sharing = new();

    public ReconciliationScope(ReconciliationInput input, ReconciliationPolicy policy, bool isForMany)
    {
        Input = input;
        Policy = policy;
        hintsDigest = new Lazy<Digest>(() => HintsText.DigestOf(input));
        People = PeopleIndex.Of(input.Inventory, input.AsOf);
        Sessions = new SessionIndex(input.Sessions, isForMany);
        notes = new(() => input.ProximityNotes.Where(note => note.LastSeen <= input.AsOf).ToLookup(static note => note.Tag));
        substitutions = People.HasSubstitutions ? new(() => new SubstitutionIndex(this)) : null;
        Entries = new EntrySearch(this);
        Receipts = new ReceiptSearch(this);
        RefusedCustody = new RefusedCustodySearch(this);
        Priors = new PriorSearch(this);
        custodyDigest = new Lazy<Digest>(() => input.Custody.Digest);
        sharesOfNoManifest = new(FindSharesOfNoManifest);
    }

    public ReconciliationInput Input { get; }

    public ReconciliationPolicy Policy { get; }

    public PeopleIndex People { get; }

    public SessionIndex Sessions { get; }

    public EntrySearch Entries { get; }

    public ReceiptSearch Receipts { get; }

    public RefusedCustodySearch RefusedCustody { get; }

    public PriorSearch Priors { get; }

    /// <summary>Absent shares stated for tools that no manifest of the register lists, in ordinal order.</summary>
    public IReadOnlyList<(ToolId Tool, decimal Share)> SharesOfNoManifest => sharesOfNoManifest.Value;

    /// <summary>Digest of the custody entries.</summary>
    public Digest CustodyDigest => custodyDigest.Value;

    /// <summary>What is in place of what in all kits; null where nobody recorded a substitution.</summary>
    public SubstitutionIndex? Substitutions => substitutions?.Value;

    public DateTimeOffset AsOf => Input.AsOf;

    public SessionReading ReadingOf(ReadSession session)
    {
        lock (sharing)
        {
            if (!readings.TryGetValue(session, out SessionReading? reading))
            {
                readings.Add(session, reading = SessionReading.Of(session, Input.Tags, Input.Kits, Input.AsOf));
            }

            return reading;
        }
    }

    /// <summary>Digest of the hints: tag histories and proximity notes, in tag order.</summary>
    public Digest HintsDigest => hintsDigest.Value;

    public IReadOnlyList<Finding> SessionFindingsOf(ReadSession session)
    {
        lock (sharing)
        {
            if (!sessionFindings.TryGetValue(session, out IReadOnlyList<Finding>? findings))
            {
                sessionFindings.Add(session, findings = SessionFindingSearch.Search(this, session));
            }

            return findings;
        }
    }

    /// <summary>The kits whose manifests in force hold a kit as a sub-kit, directly or over others.</summary>
    public IReadOnlyCollection<KitId> HoldersOf(KitId kit)
    {
        if (!Input.Kits.HasSubKits)
        {
            return [];
        }

        var holders = new HashSet<KitId>();
        var next = new Queue<KitId>([kit]);
        while (next.TryDequeue(out KitId held))
        {
            foreach (KitManifest holder in Input.Kits.ManifestsWith(held, AsOf))
            {
                if (holders.Add(holder.Id))
                {
                    next.Enqueue(holder.Id);
                }
            }
        }

        return holders;
    }

    /// <summary>What was heard of a tag outside any session, up to the as-of instant.</summary>
    public IEnumerable<ProximityNote> NotesOf(TagId tag) => notes.Value[tag];

    /// <summary>Sessions that do not present the kit and ended in time, in time order.</summary>
    public IEnumerable<ReadSession> OtherSessionsOf(KitId kit) => Sessions.All.Where(session => !session.Presents(kit) && session.To <= AsOf);

    /// <summary>Reports of items on no list: those about the kit or its sub-kits, and those that name no kit or one that no manifest describes.</summary>
    public IReadOnlyList<UnlistedItemReport> UnlistedItemsOf(KitTree tree)
        => Input.Inventory.UnlistedItems.Count == 0 ? [] : [.. Input.Inventory.UnlistedItems
            .Where(report => report.At <= AsOf && (tree.Find(report.Kit) is not null || report.Kit.IsEmpty || Input.Kits.Find(report.Kit, AsOf) is null))
            .OrderBy(static report => report.At)
            .ThenBy(static report => report.Description, StringComparer.Ordinal)];

    /// <summary>The sessions that present a kit in time order, each with whether its looks count.</summary>
    public List<SessionSummary> SessionsOf(KitId kit)
    {
        var list = new List<SessionSummary>();
        foreach (ReadSession session in Sessions.Presenting(kit))
        {
            Reason? leftOut = WhyLeftOut(session);
            list.Add(new SessionSummary { Session = session, IsUsed = leftOut is null && session.IsUsable, LeftOut = leftOut });
        }

        return list;
    }

    public string Time(DateTimeOffset instant)
        => Policy.Calendar.ToSite(instant).ToString("yyyy-MM-dd HH:mm:sszzz", CultureInfo.InvariantCulture);

    private IReadOnlyList<(ToolId Tool, decimal Share)> FindSharesOfNoManifest() =>
    [
        .. Input.AbsentShares
            .Where(pair => Input.Kits.ManifestsWith(pair.Key, AsOf).Count == 0
                && !Input.Kits.Manifests.Any(manifest => manifest.FindLine(pair.Key) is not null || manifest.FindAlternate(pair.Key) is not null))
            .OrderBy(static pair => pair.Key.Value, StringComparer.Ordinal)
            .Select(static pair => (pair.Key, pair.Value)),
    ];

    private Reason? WhyLeftOut(ReadSession session)
    {
        if (session.To > AsOf)
        {
            return new Reason(ReconciliationReasons.SessionAfterAsOf, ("session", session.Id.Value));
        }

        if (session.Policy != Policy.Sessions)
        {
            return new Reason(ReconciliationReasons.SessionOfOtherPolicy, ("session", session.Id.Value));
        }

        return AsOf - session.To > Policy.Sessions.SessionAgeMax
            ? new Reason(ReconciliationReasons.SessionTooOld, ("session", session.Id.Value), ("at", Time(session.To)))
            : null;
    }
}
