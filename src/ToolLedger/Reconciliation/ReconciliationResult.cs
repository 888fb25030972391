using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using ToolLedger.Calibration;
using ToolLedger.Custody;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>The answer for one kit: every line one conclusion, every read one explanation, findings beside them, and the digests of what it was computed from.</summary>
/// <remarks>
/// Immutable and thread-safe. The same inputs under the same policy and library version give the same result on any machine, culture and thread count.
/// This is a record-keeping aid: it does not decide that equipment is safe, and it never says missing, lost or found.
/// </remarks>
public sealed partial class ReconciliationResult
{
    private readonly PlainDetails? plain;
    private readonly Lazy<IReadOnlyList<ReadExplanation>>? reads;
    private readonly Lazy<IReadOnlyList<InputDigest>>? inputs;
    private readonly Lazy<ManifestTotals>? totals;

    internal ReconciliationResult(Func<IReadOnlyList<ReadExplanation>> explainReads, Func<IReadOnlyList<InputDigest>> digestInputs, Func<ManifestTotals> addUp)
    {
        // Explaining every read and digesting large registers is work that a caller of many kits may not need; both depend on immutable inputs only.
        reads = new Lazy<IReadOnlyList<ReadExplanation>>(explainReads);
        inputs = new Lazy<IReadOnlyList<InputDigest>>(digestInputs);
        totals = new Lazy<ManifestTotals>(addUp);
    }

    // Conclusions whose details are worked out when somebody asks.
    [SetsRequiredMembers]
    internal ReconciliationResult(KitManifest manifest, KitConclusion kit, LineConclusion[] lines, PlainDetails plain, Reconciler by, DateTimeOffset asOf)
    {
        Manifest = manifest;
        AsOf = asOf;
        Kit = kit;
        Lines = lines;
        Policy = by.Policy;
        PolicyDigest = by.PolicyDigest;
        LibraryVersion = Reconciler.LibraryVersion;
        this.plain = plain;
    }

    /// <summary>The manifest revision the kit was checked against.</summary>
    public required KitManifest Manifest { get; init; }

    /// <summary>The instant the answer is for.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Where the kit stands.</summary>
    public required KitConclusion Kit { get; init; }

    /// <summary>One conclusion for every line that is expected, in line order; with <see cref="NotExpected"/> these are all lines of the manifest.</summary>
    public required IReadOnlyList<LineConclusion> Lines { get; init; }

    /// <summary>Every conclusion: <see cref="Lines"/>, each sub-kit followed by the lines inside. <see cref="Kit"/> counts these.</summary>
    public IEnumerable<LineConclusion> AllLines => Lines.SelectMany(static line => line.WithInner());

    /// <summary>What the kit must contain, added up for the kit and for each place in it, and how much of it a reader can see. Computed when first asked for.</summary>
    public ManifestTotals Totals => totals is null ? plain!.Result.Totals : totals.Value;

    /// <summary>The lines that are not expected now, each with the annotation or the rule that says so, in line order; those inside a sub-kit stand where it does.</summary>
    public IReadOnlyList<LineNotExpected> NotExpected { get => plain is null ? field : plain.Result.NotExpected; init; } = [];

    /// <summary>Reports of items on no list, in time order. They change no conclusion and say nothing of where the item is; each is a finding too.</summary>
    public IReadOnlyList<UnlistedItemReport> UnlistedItems { get => plain is null ? field : plain.Result.UnlistedItems; init; } = [];

    /// <summary>The openings of the kit, of its sub-kits and of the kits that hold it on the inventory sheet up to the as-of instant, latest first.</summary>
    public IReadOnlyList<KitOpening> Openings { get => plain is null ? field : plain.Result.Openings; init; } = [];

    /// <summary>The job records of the consumables of the kit and of its sub-kits up to the as-of instant and no older than the policy allows, the latest of each job and line, latest first: what the kit was used on.</summary>
    public IReadOnlyList<ConsumableUse> JobRecords { get => plain is null ? field : plain.Result.JobRecords; init; } = [];

    /// <summary>Who answers for the kit at the as-of instant.</summary>
    public CustodyHolder Holder { get => plain is null ? field : plain.Result.Holder; init; }

    /// <summary>The kits that hold this one, directly or over others.</summary>
    internal IReadOnlyCollection<KitId> Holders { get => plain is null ? field : plain.Result.Holders; init; } = [];

    /// <summary>The calibration entries the second answers rest on, for a report that asks what they say of a use.</summary>
    internal CalibrationRegister CalibrationEntries { get => plain is null ? field : plain.Result.CalibrationEntries; init; } = CalibrationRegister.Empty;

    /// <summary>The custody entries that were handed in.</summary>
    internal CustodyRegister CustodyEntries { get => plain is null ? field : plain.Result.CustodyEntries; init; } = CustodyRegister.Empty;

    /// <summary>What stands beside the conclusions.</summary>
    public required IReadOnlyList<Finding> Findings { get => field ?? plain!.Result.Findings; init; }

    /// <summary>The sessions that present this kit, in time order, and whether they were used.</summary>
    public required IReadOnlyList<SessionSummary> Sessions { get => field ?? plain!.Result.Sessions; init; }

    /// <summary>Everyone who sighted, counted, witnessed or signed what counts here, in ordinal order.</summary>
    public required IReadOnlyList<PersonId> Persons { get => field ?? plain!.Result.Persons; init; }

    /// <summary>The signatures on the inventory sheet that count here.</summary>
    public required IReadOnlyList<Signature> Signatures { get => field ?? plain!.Result.Signatures; init; }

    /// <summary>The policy the answer was made under.</summary>
    public required ReconciliationPolicy Policy { get; init; }

    /// <summary>Digest of the policy and of every rule's name, version and settings.</summary>
    public required Digest PolicyDigest { get; init; }

    /// <summary>Digests of the inputs. Computed when first asked for.</summary>
    public IReadOnlyList<InputDigest> Inputs => inputs is null ? plain!.Result.Inputs : inputs.Value;

    /// <summary>The version of this library; another version may answer differently and then differs here.</summary>
    public required string LibraryVersion { get; init; }

    /// <summary>True where no line rests on a read.</summary>
    public bool NoReadUsed => KitJudge.UsesNoRead(AllLines);

    /// <summary>Exactly one explanation for every read delivered to a session that presents this kit, grouped by session and tag. Computed when first asked for.</summary>
    public IReadOnlyList<ReadExplanation> Reads => reads is null ? plain!.Result.Reads : reads.Value;

    /// <summary>The open lines in search order, those inside sub-kits too: differences, then silent tags (those usually read first), then weak ones, then what nobody counted.</summary>
    public IReadOnlyList<LineConclusion> ChaseList => [.. AllLines.Where(static line => !line.IsAccounted).Order(ChaseOrder.Instance)];

    /// <summary>Number of reads with an explanation of a kind.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>0 or more.</returns>
    public long CountOf(ReadExplanationKind kind) => Reads.Where(read => read.Kind == kind).Sum(static read => read.ReadCount);

    /// <summary>For example "kit B-07 revision 3 as of 2026-03-02T14:55:30Z: Open: 12 accounted for, 2 not read; risk 1 in 25,000". For logs and debuggers; it works nothing out that is not known already.</summary>
    /// <returns>One line of English text.</returns>
    public override string ToString() => FormattableString.Invariant($"kit {Manifest.Id.Value} revision {Manifest.Revision} as of {RecordTime.ToText(AsOf)}: {Kit}{(Kit.Risk is { } risk ? "; " + risk : "")}");
}
