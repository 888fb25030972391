using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Presence;

/// <summary>Reasons a presence policy gives.</summary>
public static class PresenceReasons
{
    /// <summary>The looks meet the policy.</summary>
    public static ReasonKind EnoughLooks { get; } = new("presence.enough-looks", "read in {looks} {looks:look|looks} on {antennas} {antennas:antenna|antennas} in {passes} {passes:pass|passes}");

    /// <summary>No look of any live tag in a usable session.</summary>
    public static ReasonKind NoLook { get; } = new("presence.no-look", "no read of its tag in a usable session");

    /// <summary>Fewer distinct looks than the policy asks for.</summary>
    public static ReasonKind FewLooks { get; } = new("presence.few-looks", "only {looks} {looks:look|looks}; the policy asks for {needed}");

    /// <summary>Enough looks, but neither on enough antennas nor in enough passes.</summary>
    public static ReasonKind OneView { get; } = new("presence.one-view", "seen on {antennas} {antennas:antenna|antennas} in {passes} {passes:pass|passes}; the policy asks for {antennasNeeded} antennas or {passesNeeded} passes");

    /// <summary>The station was degraded, so more separate passes are needed.</summary>
    public static ReasonKind DegradedStation { get; } = new("presence.degraded-station", "the session is degraded and shows it in {passes} pass(es); the policy asks for {passesNeeded} separate passes");

    /// <summary>The strongest look is well below the tag's usual strength.</summary>
    public static ReasonKind BelowBaseline { get; } = new("presence.below-baseline", "strongest look {decibels} dB below its usual strength");

    /// <summary>The tag often stays silent, which explains silence and accounts for nothing.</summary>
    public static ReasonKind PoorHistory { get; } = new("presence.poor-history", "its tag was read in {read} of {presented} past sessions: qualify the tag again");

    /// <summary>The tag is usually read, so its silence deserves the first look.</summary>
    public static ReasonKind GoodHistory { get; } = new("presence.good-history", "its tag was read in {read} of {presented} past sessions: look here first");

    /// <summary>No chip number was reported, so a copied tag could not have been noticed.</summary>
    public static ReasonKind EpcOnly { get; } = new("presence.epc-only", "identified by EPC only; copy check not made");

    /// <summary>The site does not accept identification by EPC alone.</summary>
    public static ReasonKind EpcOnlyNotAccepted { get; } = new("presence.epc-only-not-accepted", "identified by EPC only, which the policy does not accept");

    /// <summary>The risk of the line is within the cut.</summary>
    public static ReasonKind RiskWithin { get; } = new("presence.risk-within", "read in {reads} of {looks} looks, in {heard} of {passes} {passes:pass|passes}; by the model the chance that its tag is not there is at most {chance} ({percent} %), within {cut} % for one of {lines} listed {lines:line|lines}{tags:|, each counted once for every tag of this tool}");

    /// <summary>The risk of the line is over the cut.</summary>
    public static ReasonKind RiskOver { get; } = new("presence.risk-over", "read in {reads} of {looks} looks, in {heard} of {passes} {passes:pass|passes}; by the model the chance that its tag is not there is at most {chance} ({percent} %), over {cut} % for one of {lines} listed {lines:line|lines}{tags:|, each counted once for every tag of this tool}");

    /// <summary>No number of reads in such passes could bring the risk within the kit's limit.</summary>
    public static ReasonKind RiskOutOfReach { get; } = new("presence.risk-out-of-reach", "read in {reads} of {looks} looks, in {heard} of {passes} {passes:pass|passes}; by the model the chance that its tag is not there is at most {chance} ({percent} %), and no reads in so few looks prove enough for one of {lines} listed {lines:line|lines}{tags:|, each counted once for every tag of this tool}");

    /// <summary>Only degraded sessions heard the tag, and they account for nothing at a stated risk.</summary>
    public static ReasonKind RiskOfDegraded { get; } = new("presence.risk-of-degraded", "read in {reads} of {looks} looks, in {heard} of {passes} {passes:pass|passes}, but in no session of good health");

    /// <summary>What silence alone leaves of the odds.</summary>
    public static ReasonKind SilentRisk { get; } = new("presence.silent-risk", "by the model and the silence alone the chance that it is there all the same is {chance} ({percent} %), which accounts for nothing");

    /// <summary>A pass offers more looks than a stated risk weighs.</summary>
    public static ReasonKind TooManyLooks { get; } = new("presence.too-many-looks", "a pass offers more than {limit} looks, more than a stated risk weighs: use shorter passes");

    /// <summary>A term: the odds before the session.</summary>
    public static ReasonKind TermPrior { get; } = new("presence.term-prior", "odds that it is there before the session {odds}");

    /// <summary>A term: the tag was read at all.</summary>
    public static ReasonKind TermRead { get; } = new("presence.term-read", "x {by} since it was read at all, as few tags nearby are");

    /// <summary>A term: a pass with reads.</summary>
    public static ReasonKind TermReadPass { get; } = new("presence.term-read-pass", "x {by} for {reads} of {looks} looks in pass {pass} of {session}");

    /// <summary>A term: a pass of a degraded session with reads.</summary>
    public static ReasonKind TermDegradedPass { get; } = new("presence.term-degraded-pass", "x {by} for {reads} of {looks} looks in pass {pass} of {session}, which is degraded and never speaks for the tool");

    /// <summary>A term: a silent pass.</summary>
    public static ReasonKind TermSilentPass { get; } = new("presence.term-silent-pass", "x {by} for the silence of {looks} looks in pass {pass} of {session}");

    /// <summary>A term: a silent pass that counts for no more than one read would.</summary>
    public static ReasonKind TermBoundedPass { get; } = new("presence.term-bounded-pass", "x {by} for the silence of {looks} looks in pass {pass} of {session}, counted for no more than one read would be");

    /// <summary>A term: silence throughout.</summary>
    public static ReasonKind TermSilence { get; } = new("presence.term-silence", "x {by} for the silence of all {looks} looks");

    /// <summary>What the terms make together.</summary>
    public static ReasonKind TermSum { get; } = new("presence.term-sum", "together {odds}");

    /// <summary>The posterior of the model without bound and box, where it differs much.</summary>
    public static ReasonKind RiskExact { get; } = new("presence.risk-exact", "without that caution the model says {chance} ({percent} %) that it is not there");

    /// <summary>The last session has to suffice by itself.</summary>
    public static ReasonKind EarlierSetAside { get; } = new("presence.earlier-set-aside", "reads of earlier sessions are set aside: the tool may have been taken out since, so the last session has to suffice");

    /// <summary>New passes settle it.</summary>
    public static ReasonKind AdviceNewPasses { get; } = new("presence.advice-new-passes", "{passes} more {passes:pass|passes} of {looks} looks in another position would settle it in {percent} of 100 cases if it is there");

    /// <summary>More looks settle it.</summary>
    public static ReasonKind AdviceMoreLooks { get; } = new("presence.advice-more-looks", "{looks} more looks in the same position would settle it in {percent} of 100 cases if it is there");

    /// <summary>More looks do not settle it.</summary>
    public static ReasonKind AdviceNoLooks { get; } = new("presence.advice-no-looks", "more looks in the same position cannot settle it");

    /// <summary>The tag may be obscured, which more looks do not change.</summary>
    public static ReasonKind AdviceMayBeObscured { get; } = new("presence.advice-may-be-obscured", "its tag may be covered, which no number of looks in the same position changes");

    /// <summary>Only a person settles it.</summary>
    public static ReasonKind AdviceSighting { get; } = new("presence.advice-sighting", "no reasonable number of passes settles it: a person has to see it");

    /// <summary>All kinds of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
        [EnoughLooks, NoLook, FewLooks, OneView, DegradedStation, BelowBaseline, PoorHistory, GoodHistory, EpcOnly, EpcOnlyNotAccepted,
            RiskWithin, RiskOver, RiskOutOfReach, RiskOfDegraded, RiskExact, EarlierSetAside, SilentRisk, TooManyLooks, TermPrior, TermRead, TermReadPass, TermDegradedPass, TermSilentPass, TermBoundedPass, TermSilence, TermSum,
            AdviceNewPasses, AdviceMoreLooks, AdviceNoLooks, AdviceMayBeObscured, AdviceSighting];
}
