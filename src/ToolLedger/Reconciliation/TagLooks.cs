using System;
using System.Collections.Generic;
using System.Linq;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Records;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>The looks of one tag over several sessions, by pass and by antenna.</summary>
/// <param name="isHealthAside">True to take every session for one of good health.</param>
internal sealed class TagLooks(bool isHealthAside = false)
{
    private readonly List<SessionPass> passes = [];

    // In order of station and number; few, so that a tree would cost more than it saves.
    private readonly List<AntennaEvidence> antennas = [];
    private readonly List<SurroundingsChange> changes = [];
    private TagEvidence? strongest;

    public IReadOnlyList<SessionPass> Passes => passes;

    /// <summary>What people changed between the passes, as far as it separates them; filled with the evidence.</summary>
    public IReadOnlyList<SurroundingsChange> Changes => changes;

    public DateTimeOffset? FirstSeen { get; private set; }

    public DateTimeOffset? LastSeen { get; private set; }

    /// <summary>Adds a session; without evidence its passes are silent, and so they are where it cannot be used.</summary>
    public void Add(ReadSession session, TagEvidence? evidence)
    {
        // The chip number is known for the tag in the session, not for each look: one session may hear a copy that another did not.
        bool hasTid = evidence is not null && evidence.TidSpan.Length > 0;
        ReadOnlySpan<LookCell> cells = evidence is null ? [] : evidence.CellSpan;
        MakeRoom(passes, session.Passes.Count);
        for (int i = 0; i < session.Passes.Count; i++)
        {
            int number = session.Passes[i].Number;
            int looks = 0;
            foreach (LookCell cell in cells)
            {
                looks += cell.Pass == number ? cell.LookCount : 0;
            }

            passes.Add(new SessionPass(session, i, looks, hasTid ? looks : 0) { IsHealthAside = isHealthAside });
        }

        if (!session.IsUsable && !isHealthAside)
        {
            return;
        }

        MakeRoom(antennas, int.Min(cells.Length, session.Presentation.Station.Antennas.Count));
        foreach (LookCell cell in cells)
        {
            AddAntenna(session, cell, hasTid ? cell.LookCount : 0);
        }

        if (evidence is not null)
        {
            strongest = strongest?.Strongest is null || evidence.Strongest?.CentiDbm > strongest.Strongest?.CentiDbm ? evidence : strongest;
            FirstSeen = FirstSeen is null || evidence.FirstSeen < FirstSeen ? evidence.FirstSeen : FirstSeen;
            LastSeen = LastSeen is null || evidence.LastSeen > LastSeen ? evidence.LastSeen : LastSeen;
        }
    }

    /// <summary>Adds the silent passes of others, and nothing of those with looks.</summary>
    public void AddSilenceOf(TagLooks? others)
    {
        foreach (SessionPass pass in others?.passes ?? [])
        {
            if (pass.Looks == 0)
            {
                passes.Add(pass);
            }
        }
    }

    /// <summary>The evidence for a presence policy, when all sessions were added.</summary>
    /// <param name="tag">The tag.</param>
    /// <param name="shortestPass">The shortest pass that is a view of its own.</param>
    /// <param name="history">What past sessions say, or null.</param>
    /// <param name="isExplainedElsewhere">True to leave every look out, because something else explains them all.</param>
    /// <param name="counts">The lines of the kit and the tags that could have shown the tool, which count where the policy states a risk.</param>
    /// <param name="silentToo">True where silence counts.</param>
    /// <param name="mounting">The model and mounting of the tag, or null.</param>
    /// <param name="prior">How likely it was before the sessions that the tool is not there, and why; null for the policy's own share.</param>
    public PresenceEvidence ToEvidence(
        TagId tag, TimeSpan shortestPass, TagHistory? history, bool isExplainedElsewhere, (int Lines, int Tags) counts, bool silentToo, string? mounting, (decimal Share, Reason Why)? prior)
    {
        changes.Clear();
        return new PresenceEvidence
        {
            Tag = tag,
            Passes = passes.Count == 1 ? [passes[0].ToEvidence(isExplainedElsewhere)]
                : silentToo ? SeparatePasses.WithSilence(TimedPasses(isExplainedElsewhere), shortestPass, ChangesOf(), changes)
                : SeparatePasses.Of(TimedPasses(isExplainedElsewhere), shortestPass),
            Antennas = isExplainedElsewhere ? [] : antennas,
            Strongest = isExplainedElsewhere ? null : strongest?.Strongest,
            HasTid = !isExplainedElsewhere && passes.Exists(static pass => pass.TidLooks > 0),
            History = history,
            Mounting = mounting,
            KitLineCount = counts.Lines,
            ToolTagCount = counts.Tags,
            AbsentShare = prior?.Share,
            AbsentShareWhy = prior?.Why,
        };
    }

    /// <summary>
    /// The evidence once for each session since the last of good health, as if it were of good health too and the last: a tool may have been taken out before it, and that it had to show
    /// the tool by itself is not forgiven it for being degraded or unusable.
    /// </summary>
    /// <param name="evidence">What <see cref="ToEvidence"/> gave.</param>
    /// <param name="shortestPass">The shortest pass that is a view of its own.</param>
    public IEnumerable<PresenceEvidence> WithLaterSessionsAsGood(PresenceEvidence evidence, TimeSpan shortestPass)
    {
        DateTimeOffset? good = null;
        foreach (SessionPass pass in passes)
        {
            good = pass.Session.Health.State == SessionState.Valid && !(pass.Session.From <= good) ? pass.Session.From : good;
        }

        foreach (ReadSession session in passes.Select(static pass => pass.Session).Distinct().Where(session => session.From >= good && session.Health.State != SessionState.Valid))
        {
            yield return new PresenceEvidence
            {
                Tag = evidence.Tag,
                Passes = SeparatePasses.WithSilence(TimedPasses(withoutLooks: false, session), shortestPass, ChangesOf(), [], session.From),
                Antennas = evidence.Antennas,
                Strongest = evidence.Strongest,
                HasTid = evidence.HasTid,
                History = evidence.History,
                Mounting = evidence.Mounting,
                KitLineCount = evidence.KitLineCount,
                ToolTagCount = evidence.ToolTagCount,
                AbsentShare = evidence.AbsentShare,
                AbsentShareWhy = evidence.AbsentShareWhy,
            };
        }
    }

    private SurroundingsChange[] ChangesOf()
    {
        if (passes.TrueForAll(static pass => pass.Session.SurroundingsChanges.Count == 0))
        {
            return [];
        }

        SurroundingsChange[] all = [.. passes.Select(static pass => pass.Session).Distinct().SelectMany(static session => session.SurroundingsChanges).Distinct()];
        Array.Sort(all, SurroundingsChange.Compare);
        return all;
    }

    /// <summary>Makes just enough room for the first session, since most tags have no other.</summary>
    private static void MakeRoom<T>(List<T> list, int count)
    {
        if (list.Capacity == 0)
        {
            list.Capacity = count;
        }
    }

    private TimedPass[] TimedPasses(bool withoutLooks, ReadSession? asGood = null)
    {
        var timed = new TimedPass[passes.Count];
        for (int i = 0; i < timed.Length; i++)
        {
            SessionPass pass = passes[i];
            timed[i] = (ReferenceEquals(pass.Session, asGood) ? pass with { IsHealthAside = true } : pass).ToTimedPass(withoutLooks);
        }

        return timed;
    }

    private void AddAntenna(ReadSession session, LookCell cell, int tidLooks)
    {
        bool degraded = !isHealthAside && session.Health.State != SessionState.Valid;
        StationId station = session.Presentation.Station.Id;
        int place = antennas.Count;
        int order = -1;
        while (place > 0 && (order = Compare(antennas[place - 1], station, cell.Antenna)) > 0)
        {
            place--;
        }

        if (place == 0 || order < 0)
        {
            antennas.Insert(place, new AntennaEvidence(station, cell.Antenna, degraded, cell.LookCount) { TidLookCount = tidLooks });
            return;
        }

        AntennaEvidence so = antennas[place - 1];
        antennas[place - 1] = so with { IsDegraded = so.IsDegraded && degraded, LookCount = so.LookCount + cell.LookCount, TidLookCount = so.TidLookCount + tidLooks };
    }

    private static int Compare(in AntennaEvidence seen, StationId station, AntennaPort antenna)
    {
        int byStation = string.CompareOrdinal(seen.Station.Value, station.Value);
        return byStation != 0 ? byStation : seen.Antenna.Number.CompareTo(antenna.Number);
    }
}
