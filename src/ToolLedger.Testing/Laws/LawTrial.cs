using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Reconciliation;
using ToolLedger.Testing.Cases;
using ToolLedger.Testing.Simulation;
using ToolLedger.Tools;

namespace ToolLedger.Testing.Laws;

/// <summary>One case put to the laws, with its answer and the means to change the case and ask again. Sessions that a change leaves alone are closed once.</summary>
internal sealed class LawTrial
{
    private readonly LawSubject subject;
    private readonly ulong seed;
    private readonly Dictionary<SessionCase, ReadSession> closed = new(ReferenceEqualityComparer.Instance);

    public LawTrial(LawSubject subject, ReconciliationCase facts, ulong seed)
    {
        this.subject = subject;
        this.seed = seed;
        Case = facts;
        Manifest = facts.Manifest!;
        Parts = PartsOf(facts, Manifest);
        Result = Ask(facts);
        Chance = new SplitMix64(seed);
    }

    public ReconciliationCase Case { get; }

    public KitManifest Manifest { get; }

    /// <summary>The list of the kit under check and those of the boxes inside it, by the revisions listed.</summary>
    public IReadOnlyList<KitManifest> Parts { get; }

    public ReconciliationResult Result { get; }

    /// <summary>Chance of the law under way.</summary>
    public SplitMix64 Chance { get; private set; }

    public IReconciliationRule? Rule => subject.Rule;

    public ReconciliationPolicy Policy => subject.Policy;

    public LawAnswer Try(Law law)
    {
        Chance = new SplitMix64(seed + (ulong)law.Kind);
        return law.Try(this);
    }

    public ReconciliationResult Ask(ReconciliationCase facts) => subject.Reconcile(ToInput(facts));

    public ReconciliationInput ToInput(ReconciliationCase facts) => facts.ToInput(Close, subject.Policy.Custody);

    public T Pick<T>(IReadOnlyList<T> list) => list[Chance.Below(list.Count)];

    public T[] Shuffled<T>(IEnumerable<T> list)
    {
        T[] shuffled = [.. list];
        for (int i = shuffled.Length - 1; i > 0; i--)
        {
            int j = Chance.Below(i + 1);
            (shuffled[i], shuffled[j]) = (shuffled[j], shuffled[i]);
        }

        return shuffled;
    }

    /// <summary>The sessions that settle lines of the kit.</summary>
    public IEnumerable<SessionCase> UsedSessions()
        => Case.Sessions.Where(session => Result.Sessions.Any(summary => summary.IsUsed && summary.Session.Id == session.Id));

    private static List<KitManifest> PartsOf(ReconciliationCase facts, KitManifest manifest)
    {
        var parts = new List<KitManifest> { manifest };
        for (int i = 0; i < parts.Count; i++)
        {
            parts.AddRange(parts[i].Lines.OfType<SubKitLine>()
                .Select(line => facts.Manifests.FirstOrDefault(inner => inner.Id == line.Kit && inner.Revision == line.Revision))
                .OfType<KitManifest>().Where(inner => !parts.Contains(inner)).ToArray());
        }

        return parts;
    }

    /// <summary>Bindings of tools on the lists of the kit and what is inside it that hold all through a session.</summary>
    public TagBinding[] BindingsThrough(SessionCase session) => [.. Case.Bindings.Where(binding => Parts.Any(part => part.FindLine(binding.Tool) is not null)
        && binding.From <= session.From && (binding.Until is not { } until || until > session.To))];

    public ReconciliationCase With(SessionCase former, SessionCase changed)
        => Case with { Sessions = [.. Case.Sessions.Select(session => ReferenceEquals(session, former) ? changed : session)] };

    private ReadSession Close(SessionCase session)
    {
        if (!closed.TryGetValue(session, out ReadSession? read))
        {
            closed.Add(session, read = session.Close(subject.Policy.Sessions));
        }

        return read;
    }
}
