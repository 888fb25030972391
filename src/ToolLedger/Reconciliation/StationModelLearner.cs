using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>Learns how tags of each mounting class answer at each station from reconciled sessions whose truth people confirmed, never from reads alone.</summary>
/// <remarks>
/// <para>A session teaches only where it is the last one used, valid, of at most six passes in surroundings that nobody changed, and people told of every tagged line of its kit: the tool was sighted inside the kit after the session began, or counted, or a
/// receipt signed by then says that it was elsewhere. Where only some lines were looked at, those would be the silent ones, and tags would seem to answer worse than they do.</para>
/// <para>A tool on such a receipt that was read all the same is a stray, also where the policy was fooled and accounted for it by the reads: leaving those out would hide the strays that matter. Where a person saw it
/// here in spite of the receipt nobody knows, and the session teaches nothing.</para>
/// <para>No model is learned of the sessions that <see cref="TagHistoryLearner"/> leaves out as abnormal, and of tags whose binding is doubted. Those left out only since tags were silent are counted, and the bound below
/// the share of passes with a read counts their passes. A session confirmed by several results counts once. The order of the
/// results changes nothing. Stateless and thread-safe.</para>
/// </remarks>
public static class StationModelLearner
{
    /// <summary>Learns from results.</summary>
    /// <param name="results">The last results of the shifts, after sightings and counts.</param>
    /// <param name="tags">Which tag was on which tool, with its mounting (<see cref="TagBinding.TagModel"/>).</param>
    /// <param name="shrinkTo">What is believed of tags with little history, such as the policy's own model.</param>
    /// <param name="shrinkPasses">How many passes that belief counts for; 0 to 1,000,000. The default is 10 (ours).</param>
    /// <returns>What was learned.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shrinkPasses"/> is out of its range.</exception>
    public static StationLessons Learn(IEnumerable<ReconciliationResult> results, TagRegister tags, DetectionModel shrinkTo, int shrinkPasses = 10)
    {
        ArgumentNullException.ThrowIfNull(results);
        ArgumentNullException.ThrowIfNull(tags);
        ArgumentNullException.ThrowIfNull(shrinkTo);
        ArgumentOutOfRangeException.ThrowIfNegative(shrinkPasses);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(shrinkPasses, 1_000_000);
        var lessons = new Dictionary<LessonKey, StationLesson>();
        foreach (ReconciliationResult result in results)
        {
            ArgumentNullException.ThrowIfNull(result, nameof(results));
            Collect(result, tags, lessons);
        }

        // In one order, since sums of floating numbers depend on it.
        StationLesson[] taught = [.. lessons.Values
            .Where(static lesson => lesson is { IsAbnormal: false, IsConfirmed: true })
            .OrderBy(static lesson => lesson.Session.From)
            .ThenBy(static lesson => lesson.Session.Id.Value, StringComparer.Ordinal)
            .ThenBy(static lesson => lesson.Kit.Value, StringComparer.Ordinal)];
        StationLesson[] learned = Array.FindAll(taught, static lesson => !lesson.IsSilent);
        var tallies = new Dictionary<(StationId Station, string? Mounting), StationTally>();
        foreach (StationLesson lesson in taught)
        {
            Teach(lesson, tallies);
        }

        LearnedStation[] stations = [.. tallies
            .OrderBy(static pair => pair.Key.Station.Value, StringComparer.Ordinal)
            .ThenBy(static pair => pair.Key.Mounting, StringComparer.Ordinal)
            .Select(pair => pair.Value.Learned(pair.Key.Station, pair.Key.Mounting, shrinkTo, shrinkPasses))
            .OfType<LearnedStation>()];
        return new StationLessons(stations, learned.Length, lessons.Count - learned.Length, taught.Length - learned.Length);
    }

    private static void Collect(ReconciliationResult result, TagRegister tags, Dictionary<LessonKey, StationLesson> lessons)
    {
        // A tool that a person saw where a receipt says that it is elsewhere leaves open which of the two is true.
        bool isAbnormal = result.Kit.State == KitState.Discrepant || result.AllLines.Any(static line => line.Evidence.Receipt is not null && !IsOnReceipt(line));
        bool isSilent = TagHistoryLearner.IsSilent(result);
        ReadSession? last = result.Sessions.LastOrDefault(static summary => summary.IsUsed)?.Session;
        foreach (ReadSession session in result.Sessions.Where(static summary => summary.IsUsed).Select(static summary => summary.Session))
        {
            var key = new LessonKey(session.Id, session.From.UtcTicks, result.Manifest.Id);
            if (!lessons.TryGetValue(key, out StationLesson? lesson))
            {
                lessons.Add(key, lesson = new StationLesson(session, result.Manifest.Id));
            }

            lesson.IsAbnormal |= isAbnormal || session.Health.State != SessionState.Valid || session.Passes.Count > StatedRiskPolicy.MaxPassCount
                || session.SurroundingsChanges.Any(change => change.At > session.From && change.At < session.To);
            lesson.IsSilent |= isSilent;
            lesson.Doubtful.UnionWith(TagHistoryLearner.DoubtfulOf(result));
            if (session == last && Told(result, session, tags) is { Count: > 0 } told)
            {
                lesson.Confirm(told);
            }
        }
    }

    /// <summary>Every live tag of the kit with where its tool was; null where people did not tell of every tagged line.</summary>
    private static List<(TagId Tag, bool IsThere, string? Mounting)>? Told(ReconciliationResult result, ReadSession session, TagRegister tags)
    {
        var told = new List<(TagId, bool, string?)>();
        foreach (LineConclusion line in result.AllLines.Where(static line => line.Evidence.LiveTagCount > 0))
        {
            bool wasInside = TagHistoryLearner.WasInside(result, line, session);
            bool wasElsewhere = line.Evidence.Receipt is { } receipt && IsOnReceipt(line) && receipt.At <= session.From;
            if (!wasInside && !wasElsewhere)
            {
                return null;
            }

            foreach (TagBinding binding in tags.LiveTagsOf(line.Line.Tool!.Id, session.From))
            {
                if (binding.IsLiveAt(session.To) && !session.Presentation.Station.HasControlTag(binding.Tag))
                {
                    told.Add((binding.Tag, wasInside, binding.TagModel));
                }
            }
        }

        return told;
    }

    /// <summary>Whether a receipt says where a tool was and no person says otherwise; reads alone do not, they may be a stray's.</summary>
    private static bool IsOnReceipt(LineConclusion line) => line.Basis is AccountingBasis.Record or AccountingBasis.Read
        && line.OtherBases.All(static basis => basis is AccountingBasis.Record or AccountingBasis.Read);

    private static void Teach(StationLesson lesson, Dictionary<(StationId Station, string? Mounting), StationTally> tallies)
    {
        var counted = new HashSet<StationTally>();
        Span<PassLooks> passes = stackalloc PassLooks[StatedRiskPolicy.MaxPassCount];
        ReadSession session = lesson.Session;
        foreach ((TagId tag, (bool isThere, string? mounting)) in lesson.Tags)
        {
            if (lesson.Doubtful.Contains(tag))
            {
                continue;
            }

            var looks = new TagLooks();
            looks.Add(session, session.Find(tag) is { IsHeard: true } found ? found : null);
            for (int i = 0; i < looks.Passes.Count; i++)
            {
                int offered = (int)long.Min(looks.Passes[i].Pass.LookLimit, DetectionModel.MaxLooks);
                passes[i] = new PassLooks(offered, int.Min(looks.Passes[i].Looks, offered));
            }

            var key = (session.Presentation.Station.Id, mounting);
            if (!tallies.TryGetValue(key, out StationTally? tally))
            {
                tallies.Add(key, tally = new StationTally());
            }

            if (!lesson.IsSilent)
            {
                tally.Add(passes[..looks.Passes.Count], isThere);
            }
            else if (isThere)
            {
                tally.CountSilentDay(passes[..looks.Passes.Count]);
                if (counted.Add(tally))
                {
                    tally.CountSilentSession();
                }
            }
        }
    }
}
