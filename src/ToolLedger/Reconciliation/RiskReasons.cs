using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Reasons, findings and steps of a policy that states a risk.</summary>
public static class RiskReasons
{
    /// <summary>The lines that rest on reads are together over the kit's limit.</summary>
    public static ReasonKind KitRiskOverLimit { get; } = new("kit.risk-over-limit",
        "joint risk over limit: the chance that a line accounted for by reads is not there is {chance} ({percent} %), over {limit} %; line {line} sighted lowers it most, to {left} %");

    /// <summary>The risk at which the kit is signed.</summary>
    public static ReasonKind RiskStated { get; } = new("finding.risk-stated",
        "the chance that one of {count} {count:line|lines} accounted for by reads alone is not there is {chance} ({percent} %), by the policy's {models:model|models} and with a limit of {limit} %");

    /// <summary>What a kit's silence has as its causes.</summary>
    public static ReasonKind SilenceCauses { get; } = new("finding.silence-causes",
        "the silence of {count} {count:tool|tools} is one observation: kit away {away} %, reader or antennas down {down} %, each missed by itself {missed} %, before anybody looks");

    /// <summary>A new pass of so many looks.</summary>
    public static ReasonKind StepNewPass { get; } = new("step.new-pass",
        "present it again in another position (move, open or turn the bag), in {passes} {passes:pass|passes} of {looks} looks, which settles it in {percent} of 100 cases if it is there; or look for mark {mark}");

    /// <summary>To look for it first, since by the reads it is not likely to be there.</summary>
    public static ReasonKind StepLookOrPass { get; } = new("step.look-or-pass",
        "look for mark {mark}; or present it again in another position (move, open or turn the bag), in {passes} {passes:pass|passes} of {looks} looks, which settles it in {percent} of 100 cases if it is there");

    /// <summary>More looks in the same position.</summary>
    public static ReasonKind StepMoreLooks { get; } = new("step.more-looks",
        "present it again for at least {looks} looks more, which settles it in {percent} of 100 cases if it is there; or look for mark {mark}");

    /// <summary>A tag that is to be qualified again.</summary>
    public static ReasonKind StepQualifyTag { get; } = new("step.qualify-tag",
        "look for mark {mark}, and qualify its tag again: by its history reads will not settle it");

    /// <summary>People changed the surroundings between passes.</summary>
    public static ReasonKind SurroundingsChanged { get; } = new("line.surroundings-changed",
        "the surroundings were changed between passes ({what}, by {by} at {at}): whether only a tool nearby was heard is a question of its own before and after");

    /// <summary>Finding: a tag stays silent more often than usual.</summary>
    public static ReasonKind TagFading { get; } = new("finding.tag-fading",
        "tag {tag} is fading: it was silent in {silent} of {presented} past sessions, lately more often than a good tag; qualify the tag again before it fails");

    /// <summary>The caller's own probability before the session.</summary>
    public static ReasonKind PriorGiven { get; } = new("prior.given", "the chance before the session that it is not there is taken as {percent} %, as was stated for it");

    /// <summary>The probability before the session of a tool on an open receipt.</summary>
    public static ReasonKind PriorOnReceipt { get; } = new("prior.on-receipt", "the chance before the session that it is not there is taken as {percent} %: it was on receipt {entry}");

    /// <summary>The same of a tool that somebody sent away, while no receipt took effect.</summary>
    public static ReasonKind PriorSent { get; } = new("prior.sent-without-receipt", "the chance before the session that it is not there is taken as {percent} %: a record says that it went elsewhere, and no receipt took effect ({entry})");

    /// <summary>The same of a line that was open when the kit was issued or handed over.</summary>
    public static ReasonKind PriorOpenAtIssue { get; } = new("prior.open-at-issue", "the chance before the session that it is not there is taken as {percent} %: its line was open when the kit was issued or handed over ({entry})");

    /// <summary>The same of a tool that came back on a receipt.</summary>
    public static ReasonKind PriorReturned { get; } = new("prior.returned", "the chance before the session that it is not there is taken as {percent} %: it came back ({entry}), and nobody signed for the kit since");

    /// <summary>The same of a kit that was out.</summary>
    public static ReasonKind PriorIssued { get; } = new("prior.issued", "the chance before the session that it is not there is taken as {percent} %: the kit was signed out ({entry})");

    /// <summary>The same of a kit that was turned in on a signed inventory.</summary>
    public static ReasonKind PriorPacked { get; } = new("prior.packed", "the chance before the session that it is not there is taken as {percent} %: the kit was turned in on a signed inventory ({entry})");

    /// <summary>Finding: an absent share was stated for a tool that no manifest lists.</summary>
    public static ReasonKind ShareOfNoManifest { get; } = new("finding.absent-share-of-no-manifest", "{percent} % was stated as the chance that tool {tool} is not there; no manifest lists that tool, so it is used for nothing");

    /// <summary>All kinds of this file.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
        [KitRiskOverLimit, RiskStated, SilenceCauses, StepNewPass, StepLookOrPass, StepMoreLooks, StepQualifyTag, SurroundingsChanged, TagFading, PriorGiven, PriorOnReceipt, PriorSent, PriorOpenAtIssue, PriorReturned, PriorIssued, PriorPacked,
            ShareOfNoManifest];
}
