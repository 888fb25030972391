using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Adds what closed-out shifts show of each tag to its history. Only what people or a complete kit confirm is learned, and nothing of abnormal days:
/// learning from a bad day lowers the bar for every later day.</summary>
/// <remarks>
/// <para>Each result teaches of one session only, the last one it uses. There a tag counts as presented and read where it was heard, the session was valid and its line ended accounted for on a sighting, a count, or in a
/// complete kit; and as presented and silent where its tool was sighted inside that kit, or counted. Of an earlier session of the shift nobody knows whether a silent tool was inside it yet, so that its reads would count
/// and its silences would not: of n sessions a share of p would be taken for np / ((n - 1)p + 1), 2 in 3 instead of 1 in 2 where there are two.</para>
/// <para>Nothing is learned of a kit's session that was degraded; of a kit that was discrepant, silent as a whole or attenuated, or of which half of the
/// tagged lines, and as many as make a shared cause, were not read well; and of a tag whose binding is doubted. A session confirmed by several results
/// counts once, and one abnormal result of it is enough to leave it out.</para>
/// <para>The watch for fading tags, by the settings of each result's own policy, takes one step a shift for each tag, by the same session; it goes on beyond the
/// limit of counted sessions.</para>
/// <para>Stateless and thread-safe. The order of the results changes nothing.</para>
/// </remarks>
public static class TagHistoryLearner
{
    /// <summary>Learns from results.</summary>
    /// <param name="before">What is known already, up to its as-of instant.</param>
    /// <param name="results">The last results of the shifts, best after sign-off; those for a later instant than <paramref name="asOf"/> are not looked at.</param>
    /// <param name="tags">Which tag was on which tool.</param>
    /// <param name="asOf">Up to when to learn: sessions that ended after the as-of instant of <paramref name="before"/> and not after this one.</param>
    /// <returns>The histories as of that instant.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The instant is before that of <paramref name="before"/>.</exception>
    public static TagHistoryRegister Learn(TagHistoryRegister before, IEnumerable<ReconciliationResult> results, TagRegister tags, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(results);
        ArgumentNullException.ThrowIfNull(tags);
        if (asOf < before.AsOf)
        {
            throw new ArgumentException("A history is not made older: the instant is before the one up to which sessions were counted.", nameof(asOf));
        }

        var lessons = new Dictionary<LessonKey, Lesson>();
        foreach (ReconciliationResult result in results)
        {
            ArgumentNullException.ThrowIfNull(result, nameof(results));
            if (result.AsOf <= asOf)
            {
                Collect(result, tags, before.AsOf, asOf, lessons);
            }
        }

        Dictionary<TagId, TagHistoryEntry> entries = before.Entries.ToDictionary(static entry => entry.Tag);
        foreach (Lesson lesson in lessons.Values
            .Where(static lesson => !lesson.IsAbnormal)
            .OrderBy(static lesson => lesson.Session.From)
            .ThenBy(static lesson => lesson.Session.Id.Value, StringComparer.Ordinal)
            .ThenBy(static lesson => lesson.Kit.Value, StringComparer.Ordinal))
        {
            foreach ((TagId tag, TagObservation observation) in lesson.Observations.Where(pair => !lesson.Doubtful.Contains(pair.Key)))
            {
                entries[tag] = Add(entries.GetValueOrDefault(tag), tag, observation, lesson.Watch!);
            }
        }

        return new TagHistoryRegister(asOf, entries.Values);
    }

    private static void Collect(
        ReconciliationResult result, TagRegister tags, DateTimeOffset after, DateTimeOffset upTo, Dictionary<LessonKey, Lesson> lessons)
    {
        ReadSession? last = result.Sessions.LastOrDefault(static summary => summary.IsUsed)?.Session;
        HashSet<TagId> doubtful = [.. DoubtfulOf(result)];
        bool isAbnormal = IsAbnormal(result);
        foreach (ReadSession session in result.Sessions.Where(static summary => summary.IsUsed).Select(static summary => summary.Session))
        {
            if (session.To <= after || session.To > upTo)
            {
                continue;
            }

            var key = new LessonKey(session.Id, session.From.UtcTicks, result.Manifest.Id);
            if (!lessons.TryGetValue(key, out Lesson? lesson))
            {
                lessons.Add(key, lesson = new Lesson(session, result.Manifest.Id));
            }

            lesson.IsAbnormal |= isAbnormal || session.Health.State != SessionState.Valid;
            lesson.Doubtful.UnionWith(doubtful);
            lesson.Use(result.Policy.Findings.FadingWatch);
            foreach (LineConclusion line in session == last ? result.AllLines : [])
            {
                Observe(result, line, tags, session, lesson);
            }
        }
    }

    private static void Observe(ReconciliationResult result, LineConclusion line, TagRegister tags, ReadSession session, Lesson lesson)
    {
        if (line is not { IsAccounted: true, Line.Tool: { } tool })
        {
            return;
        }

        bool isConfirmed = line.Basis is AccountingBasis.Sighted or AccountingBasis.Counted || result.Kit.State == KitState.Complete;
        bool wasInside = WasInside(result, line, session);
        foreach (TagBinding binding in tags.LiveTagsOf(tool.Id, session.From))
        {
            bool isRead = session.Find(binding.Tag) is { IsHeard: true };
            bool isControl = session.Presentation.Station.ControlTags.Any(control => control.Tag == binding.Tag);
            if (binding.IsLiveAt(session.To) && !isControl && (isRead ? isConfirmed : wasInside))
            {
                lesson.Observations[binding.Tag] = new TagObservation(tool.Id, isRead, isRead ? session.Find(binding.Tag)!.Strongest : null);
            }
        }
    }

    /// <summary>Whether people say that a line's tool was in the kit since a session began.</summary>
    internal static bool WasInside(ReconciliationResult result, LineConclusion line, ReadSession session) => line.Basis == AccountingBasis.Counted
        || (line.Basis == AccountingBasis.Sighted && line.Evidence.SightedIn == result.Manifest.Id && line.Evidence.At >= session.From);

    /// <summary>Tags whose reads may be those of another tool.</summary>
    internal static IEnumerable<TagId> DoubtfulOf(ReconciliationResult result)
        => result.Findings.Where(static finding => finding.Reason.Kind == ReconciliationReasons.HistorySuspect).SelectMany(static finding => finding.Tags);

    internal static bool IsAbnormal(ReconciliationResult result) => result.Kit.State == KitState.Discrepant || IsSilent(result);

    /// <summary>Whether a day is abnormal since tags were silent or weak together.</summary>
    internal static bool IsSilent(ReconciliationResult result)
    {
        // Behind a seal a tag is silent by itself.
        List<LineConclusion> tagged = [.. result.AllLines.Where(static line => line.Evidence.LiveTagCount > 0 && line.Basis != AccountingBasis.Record)];
        int silent = tagged.Count(static line => line.Basis != AccountingBasis.Read && !line.OtherBases.Contains(AccountingBasis.Read));
        return result.Kit.State == KitState.NoValidRead
            || (silent >= result.Policy.Findings.SharedCauseLinesNeeded && silent * 2 >= tagged.Count)
            || result.Findings.Any(static finding => finding.Reason.Kind == ReconciliationReasons.Attenuated
                || finding.Reason.Kind == ReconciliationReasons.NotPresentedOrShielded);
    }

    private static TagHistoryEntry Add(TagHistoryEntry? known, TagId tag, TagObservation observation, TagFadingWatch watch)
    {
        TagHistoryEntry so = known is not null && known.Tool == observation.Tool ? known : new TagHistoryEntry(tag, observation.Tool, 0, 0, 0, 0);
        bool isFull = so.SessionsPresented == TagHistoryEntry.MaxSessionCount;
        int one = isFull ? 0 : 1;
        return new TagHistoryEntry(
            tag,
            observation.Tool,
            so.SessionsPresented + one,
            so.SessionsRead + (observation.IsRead ? one : 0),
            so.StrengthCount + (observation.Strongest is null ? 0 : one),
            so.StrengthSumCentiDbm + (isFull ? 0 : observation.Strongest?.CentiDbm ?? 0))
        {
            // A tag that was called fading stays so until it is qualified again, and then begins anew.
            FadingSum = so.FadingSum >= watch.Limit ? so.FadingSum : watch.Next(so.FadingSum, observation.IsRead),
        };
    }
}
