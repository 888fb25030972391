using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Sessions by kit and by tag, so that many kits cost the sum of their sessions and not kits times sessions.</summary>
/// <remarks>For one kit the sessions are simply gone through: building an index would cost more than it saves.</remarks>
internal sealed class SessionIndex
{
    // So few sessions are asked one by one faster than their tags are indexed.
    private const int FewSessions = 8;

    private readonly List<ReadSession> ordered;
    private readonly Dictionary<KitId, List<ReadSession>>? byKit;
    private readonly Lazy<Dictionary<TagId, List<ReadSession>>>? byTag;

    public SessionIndex(IReadOnlyList<ReadSession> sessions, bool isForMany)
    {
        // The order in which the host hands sessions in decides nothing.
        ordered = sessions.Count <= 1 ? [.. sessions] : [.. sessions
            .OrderBy(static session => session.From)
            .ThenBy(static session => session.Id.Value, StringComparer.Ordinal)];
        if (isForMany)
        {
            byKit = IndexKits(ordered);
            byTag = ordered.Count <= FewSessions ? null : new(() => IndexTags(ordered));
        }
    }

    /// <summary>Every session, in time order.</summary>
    public IReadOnlyList<ReadSession> All => ordered;

    /// <summary>The sessions that present a kit, in time order.</summary>
    public IEnumerable<ReadSession> Presenting(KitId kit) => byKit is null ? ordered.Where(session => session.Presents(kit))
        : byKit.TryGetValue(kit, out List<ReadSession>? list) ? list : [];

    /// <summary>The sessions that do not present a kit, ended by an instant and heard a tag inside their window, in time order.</summary>
    public IReadOnlyList<ReadSession> OthersThatHeard(KitId subject, TagId tag, DateTimeOffset asOf)
    {
        List<ReadSession>? asked = byTag is null ? ordered : byTag.Value.GetValueOrDefault(tag);
        List<ReadSession>? others = null;
        for (int i = 0; i < asked?.Count; i++)
        {
            ReadSession session = asked[i];
            if (session.To <= asOf && !session.Presents(subject) && (byTag is not null || session.Heard(tag)))
            {
                (others ??= []).Add(session);
            }
        }

        return others ?? (IReadOnlyList<ReadSession>)[];
    }

    private static Dictionary<KitId, List<ReadSession>> IndexKits(List<ReadSession> sessions)
    {
        var index = new Dictionary<KitId, List<ReadSession>>();
        foreach (ReadSession session in sessions)
        {
            foreach (KitId kit in session.Presentation.Kits)
            {
                Put(index, kit, session);
            }
        }

        return index;
    }

    private static Dictionary<TagId, List<ReadSession>> IndexTags(List<ReadSession> sessions)
    {
        var index = new Dictionary<TagId, List<ReadSession>>();
        foreach (ReadSession session in sessions)
        {
            foreach (TagEvidence evidence in session.Tags)
            {
                if (evidence.IsHeard)
                {
                    Put(index, evidence.Tag, session);
                }
            }
        }

        return index;
    }

    private static void Put<TKey>(Dictionary<TKey, List<ReadSession>> index, TKey key, ReadSession session)
        where TKey : notnull
    {
        if (!index.TryGetValue(key, out List<ReadSession>? list))
        {
            index.Add(key, list = new List<ReadSession>(1));
        }

        list.Add(session);
    }
}
