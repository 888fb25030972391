using System;
using System.Linq;
using ToolLedger.Kits;
using ToolLedger.Presence;
using ToolLedger.Reads;
using ToolLedger.Tools;

namespace ToolLedger.Reconciliation;

/// <summary>
/// Judges a kit about which there is nothing to weigh: one good session of one pass, tools of one piece with one tag each,
/// no word of any person, no other place that may explain a read. Whatever else there is, the careful way judges; both give
/// the same answer where this one gives any.
/// </summary>
internal static class PlainKit
{
    /// <summary>The most lines that are judged this way.</summary>
    public const int MaxLineCount = 256;

    /// <summary>Judges the lines; false where the kit is not plain.</summary>
    /// <param name="input">The input.</param>
    /// <param name="policy">The policy.</param>
    /// <param name="session">What <see cref="FindSession"/> found.</param>
    /// <param name="manifest">The manifest.</param>
    /// <param name="lines">Gets what each line of the manifest was judged by.</param>
    public static bool TryJudge(ReconciliationInput input, ReconciliationPolicy policy, ReadSession session, KitManifest manifest, Span<PlainLine> lines)
    {
        if (input.Custody.IsMentioned(manifest.Id) || input.Custody.Refused.Count > 0 || !session.Presents(manifest.Id) || !ReferenceEquals(input.Kits.Find(manifest.Id, input.AsOf), manifest))
        {
            return false;
        }

        for (int i = 0; i < lines.Length; i++)
        {
            ManifestLine line = manifest.Lines[i];
            if (line is CountedLine or ConsumableLine)
            {
                lines[i] = new PlainLine(LineState.NotAssessed, null);
            }
            else if (line is not ToolLine { Tool.PieceCount: 1 } || !TryJudge(input, policy, session, line.Tool!, lines.Length, out lines[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The only session of the input, if it is valid, of one pass, in time, and heard nothing that may be a tag written anew.</summary>
    public static ReadSession? FindSession(ReconciliationInput input, ReconciliationPolicy policy)
        => IsPlain(policy.Presence, input)
            && input.Sessions.Count == 1
            && input.Kits.Faults.All(static fault => fault.Reason.Kind == KitRules.MarkInTwoKits)
            && input.Inventory.IsEmpty
            && input.Tags.Quarantines.Count == 0
            && input.Sessions[0] is { Health.State: SessionState.Valid, NearbyKits.Count: 0, Passes.Count: 1 } session
            && session.To <= input.AsOf
            && input.AsOf - session.To <= policy.Sessions.SessionAgeMax
            && session.To - session.From >= policy.Sessions.MinimumPass
            && session.Policy == policy.Sessions
            && session.AllHeard(input.Tags, static (tags, tag, at) => tags.FindLive(tag, at) is not null || tags.ToolByDecodedIdentity(tag, at) is null)
                ? session
                : null;

    /// <summary>With a stated risk custody and the caller have a say in every line.</summary>
    private static bool IsPlain(PresencePolicy policy, ReconciliationInput input) => policy switch
    {
        CountingPolicy counting => counting.EpcOnlyAccepted,
        StatedRiskPolicy stated => stated.EpcOnlyAccepted && input.Custody.IsEmpty && input.AbsentShares.Count == 0,
        _ => false,
    };

    private static bool TryJudge(ReconciliationInput input, ReconciliationPolicy policy, ReadSession session, Tool tool, int lineCount, out PlainLine line)
    {
        line = default;
        if (input.Tags.OnlyBindingOf(tool.Id) is not { } binding
            || !binding.IsLiveAt(session.From) || !binding.IsLiveAt(session.To) || !binding.IsLiveAt(input.AsOf)
            || session.Presentation.Station.HasControlTag(binding.Tag))
        {
            return false;
        }

        bool isHeard = session.TryGetPlain(binding.Tag, out PlainLooks looks) && looks.IsHeard;
        bool isFresh = isHeard && input.AsOf.UtcTicks - looks.LastTicks <= policy.Sessions.SessionAgeMax.Ticks;
        if (isHeard && (!looks.Tids.Second.IsEmpty || (!looks.Tids.First.IsEmpty && !binding.Tid.IsEmpty && looks.Tids.First != binding.Tid)))
        {
            return false;
        }

        int looksHeard = isFresh ? looks.LookCount : 0;
        if (policy.Presence is StatedRiskPolicy stated)
        {
            return TryDecide(stated, session, binding, looksHeard, lineCount, out line);
        }

        var counting = (CountingPolicy)policy.Presence;
        PresenceJudgement judgement = looksHeard > 0
            ? counting.JudgeOnePass(looksHeard, looks.AntennaCount, !looks.Tids.First.IsEmpty)
            : counting.JudgeOnePass(0, 0, hasTid: false);
        line = new PlainLine(StateOf(judgement.State), judgement);
        return true;
    }

    private static bool TryDecide(StatedRiskPolicy policy, ReadSession session, TagBinding binding, int looks, int lineCount, out PlainLine line)
    {
        line = default;
        long offered = session.Passes[0].LookLimit;
        if (offered > DetectionModel.MaxLooks || looks > offered)
        {
            return false;
        }

        PresenceDecision decision = policy.Decide(
            [new PassLooks((int)offered, looks) { Model = policy.NumberOf(session.Presentation.Station.Id, binding.TagModel) }], lineCount);
        line = new PlainLine(StateOf(decision.State), null, decision.Risk);
        return true;
    }

    private static LineState StateOf(PresenceState state) => state switch
    {
        PresenceState.Accounted => LineState.Accounted,
        PresenceState.Weak => LineState.Weak,
        _ => LineState.NotRead,
    };
}
