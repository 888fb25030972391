using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using ToolLedger.Inventory;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Reconciliation.Rules;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Compares what a kit must hold with the evidence and says, for every line, whether it is accounted for, on what basis, and what would settle it.</summary>
/// <remarks>
/// Stateless and thread-safe. "Not read" does not mean missing; "read" does not mean in the bag. Ending a search, releasing equipment and
/// declaring a tool missing belong to the people whom local rules name.
/// </remarks>
public sealed class Reconciler
{
    // A kit without a session of its own names the first sessions of others, which is enough to see a wrong kit id.
    private const int OtherSessionsNamed = 10;

    private static readonly IReconciliationRule[] BuiltIn =
        [new IdentityRule(), new CountRule(), new BalanceRule(), new PieceRule(), new WitnessRule(), new SubKitRule(), new BasisRule()];

    private readonly ReconciliationPolicy policy;
    private readonly IReconciliationRule[] rules;
    private readonly ILogger logger;

    /// <summary>Makes a reconciler.</summary>
    /// <param name="policy">The policy.</param>
    /// <param name="rules">Further rules, which can withhold "accounted for" and never grant it; null for none.</param>
    /// <param name="logger">Where to log; null for nowhere.</param>
    /// <exception cref="ArgumentNullException"><paramref name="policy"/>, or one of the rules, is null.</exception>
    /// <exception cref="ArgumentException">Two rules share a name, or a rule has no name, no version or null settings.</exception>
    public Reconciler(ReconciliationPolicy policy, IReadOnlyList<IReconciliationRule>? rules = null, ILogger? logger = null)
    {
        ArgumentNullException.ThrowIfNull(policy);
        this.policy = policy;
        this.rules = [.. BuiltIn, .. rules ?? []];
        this.logger = logger ?? NullLogger.Instance;
        CheckNames(this.rules);
        PolicyDigest = policy.DigestWith(this.rules);
    }

    /// <summary>The library's version, as results state it.</summary>
    public static string LibraryVersion { get; } =
        typeof(Reconciler).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "unknown";

    internal ReconciliationPolicy Policy => policy;

    /// <summary>Digest of the policy and of every rule's name, version and settings.</summary>
    public Digest PolicyDigest { get; }

    /// <summary>Reconciles one kit.</summary>
    /// <param name="input">Everything to look at.</param>
    /// <returns>The result.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="input"/> is null.</exception>
    /// <exception cref="ArgumentException">The register holds no manifest of the subject (of the revision asked for, or effective at the as-of instant), two sessions share an id, or an absent share is out of its range.</exception>
    /// <exception cref="RuleException">A rule of the host threw, gave no verdict or spoke of a line that the kit does not have.</exception>
    public ReconciliationResult Reconcile(ReconciliationInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        Check(input);
        return Reconcile(input, PlainSessionOf(input), ScopeOf(input, isForMany: false), input.Subject, input.Revision);
    }

    /// <summary>Reconciles many kits from one pass over the sessions; each result equals that of <see cref="Reconcile(ReconciliationInput)"/> for its kit.</summary>
    /// <param name="input">Everything to look at; its subject and revision are not used.</param>
    /// <param name="kits">The kits, in the order results are wanted.</param>
    /// <returns>One result a kit, computed as the caller moves on.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">Two sessions share an id, an absent share is out of its range, or the register holds no manifest of a kit effective at the as-of instant (thrown when that kit is reached).</exception>
    /// <exception cref="RuleException">A rule of the host failed (thrown when that kit is reached). Results handed out before stand; to go on with the kits behind it, ask again for those.</exception>
    public IEnumerable<ReconciliationResult> ReconcileAll(ReconciliationInput input, IEnumerable<KitId> kits)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(kits);
        Check(input);
        return All(input, kits);
    }

    private static void CheckNames(IReadOnlyList<IReconciliationRule> rules)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (IReconciliationRule rule in rules)
        {
            ArgumentNullException.ThrowIfNull(rule, nameof(rules));
            if (string.IsNullOrWhiteSpace(rule.Name) || !names.Add(rule.Name))
            {
                throw new ArgumentException($"Every rule needs a name of its own; \"{rule.Name}\" is empty or taken.", nameof(rules));
            }

            if (string.IsNullOrWhiteSpace(rule.Version) || rule.Settings is null)
            {
                throw new ArgumentException($"Rule \"{rule.Name}\" needs a version, and settings that may be empty but not null.", nameof(rules));
            }
        }
    }

    private static void Check(ReconciliationInput input)
    {
        foreach ((ToolId tool, decimal share) in input.AbsentShares)
        {
            if (!StatedRiskPolicy.IsAbsentShare(share))
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"The absent share of tool \"{tool.Value}\" is {share}; it must be 0.000001 to 0.9 with at most 9 decimals."), nameof(input));
            }
        }

        if (input.Sessions.Count < 2)
        {
            return;
        }

        var ids = new HashSet<SessionId>();
        foreach (ReadSession session in input.Sessions)
        {
            if (!ids.Add(session.Id))
            {
                throw new ArgumentException($"Two sessions share the id \"{session.Id}\"; every read would be explained twice.", nameof(input));
            }
        }
    }

    private IEnumerable<ReconciliationResult> All(ReconciliationInput input, IEnumerable<KitId> kits)
    {
        ReadSession? plain = PlainSessionOf(input);
        Lazy<ReconciliationScope> scope = ScopeOf(input, isForMany: true);
        foreach (KitId kit in kits)
        {
            yield return Reconcile(input, plain, scope, kit, revision: null);
        }
    }

    private ReadSession? PlainSessionOf(ReconciliationInput input) => rules.Length == BuiltIn.Length ? PlainKit.FindSession(input, policy) : null;

    private Lazy<ReconciliationScope> ScopeOf(ReconciliationInput input, bool isForMany) => new(() => new ReconciliationScope(input, policy, isForMany));

    private ReconciliationResult Reconcile(ReconciliationInput input, ReadSession? plain, Lazy<ReconciliationScope> scope, KitId kit, int? revision)
    {
        KitManifest manifest = FindManifest(input, kit, revision);
        int count = manifest.Lines.Count;
        if (plain is not null && count <= PlainKit.MaxLineCount)
        {
            var lines = new PlainLine[count];
            if (PlainKit.TryJudge(input, policy, plain, manifest, lines))
            {
                ReconciliationResult result = Conclude(manifest, lines, new PlainDetails(manifest, lines, scope, this, input), input.AsOf);
                ReconcilerLog.KitReconciled(logger, kit, manifest.Revision, result.Kit);
                return result;
            }
        }

        ReconciliationResult careful = ReconcileWithCare(scope.Value, manifest);
        ReconcilerLog.KitReconciled(logger, kit, manifest.Revision, careful.Kit);
        return careful;
    }

    private ReconciliationResult Conclude(KitManifest manifest, PlainLine[] plain, PlainDetails details, DateTimeOffset asOf)
    {
        var lines = new LineConclusion[manifest.Lines.Count];
        int open = 0;
        for (int i = 0; i < lines.Length; i++)
        {
            lines[i] = new LineConclusion(manifest.Lines[i], details, i);
            open += lines[i].IsAccounted ? 0 : 1;
        }

        KitRisk? risk = KitRisk.Of(policy.Presence, manifest, plain);
        Reason? overLimit = risk is { IsWithinLimit: false } ? KitJudge.OverLimit(risk) : null;
        Reason[] reasons = (open, overLimit) switch
        {
            (0, null) => [],
            (0, _) => [overLimit],
            (_, null) => [KitJudge.LinesOpen(open, lines.Length)],
            _ => [KitJudge.LinesOpen(open, lines.Length), overLimit],
        };
        var conclusion = new KitConclusion(reasons.Length == 0 ? KitState.Complete : KitState.Open, reasons, lines) { Risk = risk };
        return new ReconciliationResult(manifest, conclusion, lines, details, this, asOf);
    }

    /// <summary>Looks at everything there is.</summary>
    internal ReconciliationResult ReconcileWithCare(ReconciliationScope scope, KitManifest manifest)
    {
        KitId kit = manifest.Id;
        List<SessionSummary> sessions = scope.SessionsOf(kit);
        KitTree tree = KitTree.Of(manifest, scope, scope.People.HasAnnotations || scope.People.HasSubstitutions ? PresentationSearch.Of(scope, manifest, sessions) : scope.AsOf);
        var collector = new ToolReadsCollector(scope, tree, sessions);
        var notExpected = new NotExpectedSearch(scope, tree);
        JudgedLine[] own = new LineJudge(scope, tree, collector, rules, notExpected).JudgeLines();
        JudgedLine[] judged = manifest.HasSubKits ? [.. own.SelectMany(static line => line.WithInner())] : own;
        LineConclusion[] lines = Array.ConvertAll(judged, static line => line.Conclusion);
        var signing = new SignatureSearch(scope, lines);
        List<Signature> signatures = signing.Used();
        List<PersonId> persons = PersonsOf(lines, signatures);
        KitConclusion conclusion = KitJudge.Judge(scope, tree, lines, collector.HasUsableSession, persons, notExpected.Contradictions);
        var people = new PeopleFindingSearch(scope, tree, lines);
        IReadOnlyCollection<KitId> holders = scope.HoldersOf(kit);
        IReadOnlyList<LineNotExpected> leftOut = notExpected.Lines;
        return new ReconciliationResult(
            () => ReadExplainer.Explain(scope, tree, leftOut, sessions),
            () => InputsOf(scope, tree, sessions),
            () => ManifestTotals.Of(manifest, scope.Input.Kits, scope.Input.Tags, scope.AsOf))
        {
            Manifest = manifest,
            AsOf = scope.AsOf,
            Kit = conclusion,
            Lines = manifest.HasSubKits ? Array.ConvertAll(own, static line => line.Conclusion) : lines,
            NotExpected = leftOut,
            UnlistedItems = people.UnlistedItems,
            Openings = OpeningsOf(scope, tree, holders),
            JobRecords = people.JobRecords(),
            Holders = holders,
            Holder = scope.Input.Custody.HolderOf(kit, scope.AsOf),
            CalibrationEntries = scope.Input.Calibration,
            CustodyEntries = scope.Input.Custody,
            Findings =
            [
                .. people.UnlistedItemFindings(), .. people.OpeningFindings(), .. FindingsOf(scope, manifest, collector, judged, sessions), .. RiskFindingSearch.Of(scope, collector, conclusion, judged), .. notExpected.Findings,
                .. scope.Entries.Search(tree, signing), .. scope.Receipts.KitFindings(manifest), .. scope.RefusedCustody.Search(tree, lines),
            ],
            Sessions = sessions,
            Persons = persons,
            Signatures = signatures,
            Policy = policy,
            PolicyDigest = PolicyDigest,
            LibraryVersion = LibraryVersion,
        };
    }

    private static IReadOnlyList<KitOpening> OpeningsOf(ReconciliationScope scope, KitTree tree, IReadOnlyCollection<KitId> holders)
    {
        IReadOnlyList<KitOpening> own = tree.Openings(scope);
        KitOpening[] outer = [.. holders.SelectMany(scope.People.OpeningsOf)];
        return outer.Length == 0 ? own
            : [.. own.Concat(outer).OrderByDescending(static opening => opening.At).ThenBy(static opening => opening.Kit.Value, StringComparer.Ordinal)];
    }

    private static KitManifest FindManifest(ReconciliationInput input, KitId kit, int? revision)
    {
        KitManifest? manifest = (revision ?? input.Custody.IssueOf(kit, input.AsOf)?.Revision) is { } number ? input.Kits.Find(kit, number) : input.Kits.Find(kit, input.AsOf);
        if (manifest is not null)
        {
            return manifest;
        }

        string which = revision is { } asked ? string.Create(CultureInfo.InvariantCulture, $"revision {asked}") : "effective at " + RecordTime.ToText(input.AsOf);
        throw new ArgumentException($"The register holds no manifest of kit \"{kit}\" {which}.", nameof(input));
    }

    private static List<PersonId> PersonsOf(LineConclusion[] lines, List<Signature> signatures)
        => signatures.Count == 0 && Array.TrueForAll(lines, static line => line.Evidence.Persons.Count == 0) ? [] : [.. lines.SelectMany(static line => line.Evidence.Persons)
            .Concat(signatures.Select(static signature => signature.By))
            .Distinct()
            .OrderBy(static person => person.Value, StringComparer.Ordinal)];

    private static List<Finding> FindingsOf(
        ReconciliationScope scope, KitManifest manifest, ToolReadsCollector collector, IReadOnlyList<JudgedLine> judged, List<SessionSummary> sessions)
    {
        var findings = new List<Finding>(new FindingSearch(scope, manifest, collector, judged).Search());
        foreach (ReadSession other in sessions.Count > 0 ? [] : scope.OtherSessionsOf(manifest.Id).Take(OtherSessionsNamed))
        {
            string kits = string.Join(", ", other.Presentation.Kits.Take(10).Select(static kit => kit.Value));
            findings.Add(new Finding(
                FindingLevel.Kit, new Reason(ReconciliationReasons.SessionOfOtherKits, ("session", other.Id.Value), ("kits", kits.Length > 0 ? kits : "no kit")))
            {
                Session = other.Id,
            });
        }

        foreach (SessionSummary summary in sessions)
        {
            if (summary.LeftOut is { } leftOut)
            {
                findings.Add(new Finding(FindingLevel.Session, leftOut) { Session = summary.Session.Id });
            }

            findings.AddRange(scope.SessionFindingsOf(summary.Session));
        }

        return findings;
    }

    private static List<InputDigest> InputsOf(
        ReconciliationScope scope, KitTree tree, List<SessionSummary> sessions)
    {
        var list = new List<InputDigest>
        {
            new("manifest", tree.Manifest.Digest),
            new("kit register", scope.Input.Kits.Digest),
            new("tag register", scope.Input.Tags.Digest),
            new("inventory sheet", scope.Input.Inventory.Digest),
            new("calibration register", scope.Input.Calibration.Digest),
        };
        if (!scope.Input.Custody.IsEmpty)
        {
            list.Add(new InputDigest("custody register", scope.CustodyDigest));
        }

        list.AddRange(tree.All.Skip(1).Select(static part => new InputDigest("manifest of sub-kit " + part.Manifest.Id.Value, part.Manifest.Digest)));
        if (scope.Input.History.Count > 0 || scope.Input.ProximityNotes.Count > 0)
        {
            list.Add(new InputDigest("hints", scope.HintsDigest));
        }

        if (scope.Input.AbsentShares.Count > 0)
        {
            list.Add(new InputDigest("absent shares", HintsText.DigestOfShares(scope.Input)));
        }

        list.AddRange(sessions.Select(static summary => new InputDigest("session " + summary.Session.Id.Value, summary.Session.Digest)));
        list.AddRange(scope.OtherSessionsOf(tree.Manifest.Id).Select(static session => new InputDigest("session of another kit " + session.Id.Value, session.Digest)));
        return list;
    }
}
