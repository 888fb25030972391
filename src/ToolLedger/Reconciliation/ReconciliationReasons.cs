using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Reasons, steps and findings of this room. The codes are stable; the sentences can be replaced by a <see cref="Wording"/>.</summary>
public static class ReconciliationReasons
{
    /// <summary>Sighted by its own mark.</summary>
    public static ReasonKind Sighted { get; } = new("line.sighted", "sighted by {by} at {at}, {where}, mark {mark}");

    /// <summary>Counted in full.</summary>
    public static ReasonKind Counted { get; } = new("line.counted", "counted {counted} of {expected} by {by} at {at}");

    /// <summary>Pieces counted in full.</summary>
    public static ReasonKind PiecesCounted { get; } = new("line.pieces-counted", "{counted} of {expected} pieces counted by {by} at {at}");

    /// <summary>The reads are better explained by another kit's session.</summary>
    public static ReasonKind BetterElsewhere { get; } = new("line.better-explained-elsewhere", "session {session} of another kit at the same station saw it more often at that time");

    /// <summary>A later presentation of the kit did not hear it.</summary>
    public static ReasonKind LaterSilent { get; } = new("line.later-session-silent", "read earlier, but not in the later session {session} of this kit: it may have been taken out in between");

    /// <summary>A later session heard the tool too seldom to show that it was still there.</summary>
    public static ReasonKind LaterFew { get; } = new("line.later-session-few", "read earlier, but in only {looks} {looks:look|looks} of the later session {session} of this kit, where the policy asks for {needed}: it may have been taken out in between");

    /// <summary>The reads are older than the clearing of a doubt about the tag.</summary>
    public static ReasonKind ReadBeforeClearing { get; } = new("line.read-before-clearing", "the binding of tag {tag} was in doubt until {at}; a session that began before that accounts for nothing");

    /// <summary>Heard only while another kit stood nearby.</summary>
    public static ReasonKind OnlyWhileNearby { get; } = new("line.only-while-nearby", "seen only while kit {kit} stood there ({looks} {looks:look|looks}), not in a pass without it: not counted");

    /// <summary>Container shown, contents not counted.</summary>
    public static ReasonKind ContainerOnly { get; } = new("line.container-only", "only the container is shown; its contents ({total} with the container) were not counted");

    /// <summary>Counted below the expected number.</summary>
    public static ReasonKind CountShort { get; } = new("line.count-short", "{short} short of {expected}");

    /// <summary>Counted above the expected number.</summary>
    public static ReasonKind Surplus { get; } = new("line.surplus", "{over} more than {expected}: a surplus means an earlier count was wrong or another kit is short");

    /// <summary>Pieces not counted.</summary>
    public static ReasonKind PiecesNotCounted { get; } = new("line.pieces-not-counted", "it has {expected} pieces and nobody counted them; a tag covers only the piece it is on");

    /// <summary>Number of pieces not known.</summary>
    public static ReasonKind PiecesUnknown { get; } = new("line.pieces-unknown", "the number of its pieces is not known; an unknown total cannot be met");

    /// <summary>Pieces below the expected number.</summary>
    public static ReasonKind PiecesShort { get; } = new("line.pieces-short", "{short} of {expected} pieces short");

    /// <summary>Pieces above the expected number.</summary>
    public static ReasonKind PiecesOver { get; } = new("line.pieces-over", "{over} more pieces than {expected}");

    /// <summary>Nobody counted it.</summary>
    public static ReasonKind NotCounted { get; } = new("line.not-counted", "no reader can see it and nobody counted it");

    /// <summary>No live tag.</summary>
    public static ReasonKind NoLiveTag { get; } = new("line.no-live-tag", "it carries no live tag, so no reader can see it");

    /// <summary>No usable session.</summary>
    public static ReasonKind NoUsableSession { get; } = new("line.no-usable-session", "no usable read session of this kit: no measurement took place");

    /// <summary>A count in another unit.</summary>
    public static ReasonKind OtherUnit { get; } = new("line.count-in-other-unit", "a count of {counted} by {by} is in another unit than the line's {unit}: not a count of it");

    /// <summary>A count does not identify a marked tool.</summary>
    public static ReasonKind CountNotIdentity { get; } = new("line.count-is-no-identity", "a count by {by} does not identify a marked tool; sight it by its mark");

    /// <summary>A mark that is not this tool's.</summary>
    public static ReasonKind OtherMark { get; } = new("line.other-mark", "{by} read mark {read}, the tool's mark is {mark}: another tool may be wearing its tag");

    /// <summary>A mark several tools share.</summary>
    public static ReasonKind SharedMark { get; } = new("line.shared-mark", "mark {mark} is on several tools of the kit and identifies none of them");

    /// <summary>Seen inside another kit.</summary>
    public static ReasonKind SightedInOtherKit { get; } = new("line.sighted-in-other-kit", "{by} sighted it in kit {kit} at {at}, not here");

    /// <summary>Evidence older than the policy allows.</summary>
    public static ReasonKind TooOld { get; } = new("line.evidence-too-old", "{what} by {by} at {at} is older than the policy allows");

    /// <summary>A count made before the manifest revision took effect.</summary>
    public static ReasonKind CountOfOtherRevision { get; } = new("line.count-of-other-revision", "a count by {by} at {at} is older than this revision of the manifest: not a count of its lines");

    /// <summary>Two counts differ.</summary>
    public static ReasonKind CountsDiffer { get; } = new("line.counts-differ", "an earlier count by {by} was {counted}; the latest stands");

    /// <summary>A retired tag of the tool was read.</summary>
    public static ReasonKind RetiredTagRead { get; } = new("identity.retired-tag-read", "its retired tag {tag} was read at {at}: the tag may be lying loose, or on another tool");

    /// <summary>Two chip numbers under one EPC.</summary>
    public static ReasonKind TwoChips { get; } = new("identity.two-chips", "tag {tag} answered with two or more chip numbers ({tids}): two tags claim one identity");

    /// <summary>Another chip number than commissioned.</summary>
    public static ReasonKind WrongChip { get; } = new("identity.wrong-chip", "tag {tag} answered with chip number {read}, commissioned was {bound}: re-encoded or copied");

    /// <summary>A tag with other bits carries the tool's identity.</summary>
    public static ReasonKind Reencoded { get; } = new("identity.re-encoded", "tag {tag} carries this tool's identity in other bits than bound: re-encoded or copied");

    /// <summary>The binding changed within the reads.</summary>
    public static ReasonKind BindingChanged { get; } = new("identity.binding-changed", "the binding of tag {tag} began or ended between its reads of this session");

    /// <summary>A tool on two manifests was read in the other kit's session, or in one that presents both.</summary>
    public static ReasonKind CreditedToTwoKits { get; } = new("identity.credited-to-two-kits", "tool {tool} is also on the manifest of kit {kit} and was read where that kit was presented: one tool cannot satisfy two kits");

    /// <summary>One tool stands on several lines of the kit.</summary>
    public static ReasonKind CreditedToTwoLines { get; } = new("identity.credited-to-two-lines", "tool {tool} stands on lines {lines}, listed or in place of another: one tool cannot satisfy two lines");

    /// <summary>A sighting or count of a tool of several kits does not say which kit it was in.</summary>
    public static ReasonKind KitNotSaid { get; } = new("identity.kit-not-said", "tool {tool} belongs to kit {kit} too and nobody said in which of them it was: one tool cannot satisfy two kits");

    /// <summary>Nothing shows which of several kits a sub-kit is in.</summary>
    public static ReasonKind SubKitNotSaid { get; } = new("identity.sub-kit-not-placed", "sub-kit {sub} is on the manifest of kit {kit} too and nothing shows in which of them it was: one sub-kit cannot satisfy two kits");

    /// <summary>A control tag of the station is bound to the tool.</summary>
    public static ReasonKind BoundControlTag { get; } = new("identity.bound-control-tag", "its tag {tag} is also a control tag of station {station}, where it always answers");

    /// <summary>A person doubts the binding of its tag.</summary>
    public static ReasonKind Quarantined { get; } = new("identity.quarantined", "the binding of tag {tag} to {tool} is quarantined by {by} since {at} ({why}): its reads account for nothing");

    /// <summary>A person read this tool's mark on a tool taken for another one.</summary>
    public static ReasonKind MarkOnOtherTool { get; } = new("identity.mark-on-other-tool", "{by} read its mark {mark} on the tool taken for {other}: the tags of both may be swapped");

    /// <summary>The doubt was settled by a sighting.</summary>
    public static ReasonKind IdentitySettled { get; } = new("identity.settled-by-mark", "identity was in doubt ({code}) and settled by the sighting of its mark");

    /// <summary>What only a session that cannot be used says against a tool.</summary>
    public static ReasonKind SaidByUnusable { get; } = new("identity.said-by-unusable-session", "session {session} cannot be used and settles nothing; what it heard against the tool stands until its mark is read");

    /// <summary>Step: present again.</summary>
    public static ReasonKind StepPresentAgain { get; } = new("step.present-again", "open the bag, turn it, present it again; if still silent, look for mark {mark}");

    /// <summary>Step: second pass.</summary>
    public static ReasonKind StepSecondPass { get; } = new("step.second-pass", "make a second, separate pass at this station, or look for mark {mark}");

    /// <summary>Step: sight the tool.</summary>
    public static ReasonKind StepSightTool { get; } = new("step.sight-tool", "look at the tool and read its mark ({mark})");

    /// <summary>Step: look in another kit.</summary>
    public static ReasonKind StepLookInKit { get; } = new("step.look-in-kit", "look in kit {kit} for mark {mark}");

    /// <summary>Step: count items.</summary>
    public static ReasonKind StepCountItems { get; } = new("step.count-items", "count the {amount} listed: {what}");

    /// <summary>Step: count pieces.</summary>
    public static ReasonKind StepCountPieces { get; } = new("step.count-pieces", "count its pieces ({expected} expected)");

    /// <summary>Step: search the shortage.</summary>
    public static ReasonKind StepSearchShortage { get; } = new("step.search-shortage", "stop, search for what is short of \"{what}\" and follow the local lost-tool procedure");

    /// <summary>Step: resolve the surplus.</summary>
    public static ReasonKind StepResolveSurplus { get; } = new("step.resolve-surplus", "count \"{what}\" again with a second person and find where the surplus belongs");

    /// <summary>Step: settle the identity.</summary>
    public static ReasonKind StepSettleIdentity { get; } = new("step.settle-identity", "look at the tool, read its mark ({mark}) and check which tags it wears");

    /// <summary>Step: present the kit at a working station.</summary>
    public static ReasonKind StepPresentAtStation { get; } = new("step.present-at-station", "present the kit at a working station, or look for mark {mark}");

    /// <summary>Seen somewhere, and not said to be in the kit.</summary>
    public static ReasonKind SightedOutside { get; } = new("line.sighted-outside", "seen by {by} at {where}, {at}, and not said to be in the kit: that does not bring it back, and what was read or counted before counts no more");

    /// <summary>Read later, and as well, with other kits.</summary>
    public static ReasonKind ReadLaterElsewhere { get; } = new("line.read-later-elsewhere", "read at {at} in session {session} of other kits ({kits}), later than here and at least as well: what was read here before counts no more");

    /// <summary>Finding: seen outside any kit that was named.</summary>
    public static ReasonKind FindingSeenOutside { get; } = new("finding.seen-outside", "{tool} was seen by {by} at {where}, {at}, and nobody said that it was in the kit: look there first");

    /// <summary>Finding: read later with other kits.</summary>
    public static ReasonKind FindingReadLater { get; } = new("finding.read-later-elsewhere", "read at {at} in session {session} of other kits ({kits}), later than in this kit's sessions: look there first");

    /// <summary>Finding: marks of another form than the site's.</summary>
    public static ReasonKind FindingMarkFormat { get; } = new("finding.mark-format", "{count} {count:tool|tools} on the list {count:carries|carry} no mark of the form that this site asks for ({form}): have the list or the marks put right");

    /// <summary>Kit: lines open.</summary>
    public static ReasonKind KitLinesOpen { get; } = new("kit.lines-open", "{count} of {total} {total:line|lines} not accounted for");

    /// <summary>Kit: differences shown.</summary>
    public static ReasonKind KitDifferences { get; } = new("kit.differences", "positive evidence of a difference on {count:line|lines} {lines}");

    /// <summary>Kit: a foreign tool was sighted inside.</summary>
    public static ReasonKind KitForeignTool { get; } = new("kit.foreign-tool-sighted", "tool {tool} of another list was sighted inside by {by} at {at}, and by its mark in no other kit since");

    /// <summary>Kit: a tool that no list in force names was sighted inside.</summary>
    public static ReasonKind KitUnlistedTool { get; } = new("kit.unlisted-tool-sighted", "tool {tool}, which is on no list in force, was sighted inside by {by} at {at}, and by its mark in no other kit since");

    /// <summary>Kit: no usable session and a tagged line open.</summary>
    public static ReasonKind KitNoUsableSession { get; } = new("kit.no-usable-session", "tagged lines are open and no session of the kit can be used");

    /// <summary>Kit: nothing expected.</summary>
    public static ReasonKind KitNothingExpected { get; } = new("kit.nothing-expected", "no line is expected; an empty list is never complete");

    /// <summary>Kit: complete without a read.</summary>
    public static ReasonKind KitNoReadUsed { get; } = new("kit.no-read-used", "no read was used: every line rests on people's sightings, counts or records");

    /// <summary>Kit: manual inventory not allowed.</summary>
    public static ReasonKind KitManualNotAllowed { get; } = new("kit.manual-inventory-not-allowed", "every line rests on people alone, and the policy does not allow a manual inventory");

    /// <summary>Kit: more persons needed.</summary>
    public static ReasonKind KitMorePersons { get; } = new("kit.more-persons-needed", "lines rest on people alone; the policy asks for {needed} persons, {count} took part or signed since");

    /// <summary>Finding: kit not presented or shielded.</summary>
    public static ReasonKind NotPresentedOrShielded { get; } = new("finding.not-presented-or-shielded", "usable session, and no tag of kit {kit} was read: not presented, or shielded");

    /// <summary>Finding: attenuated.</summary>
    public static ReasonKind Attenuated { get; } = new("finding.attenuated", "most tagged lines are silent or weak and every look is at least {decibels} dB below its usual strength: whole bag attenuated (wet, foil, metal lid); open it and look");

    /// <summary>Finding: shared location.</summary>
    public static ReasonKind SharedLocation { get; } = new("finding.shared-location", "all open tagged lines of \"{location}\" share that place, and none there was read well");

    /// <summary>Finding: shared antenna.</summary>
    public static ReasonKind SharedAntenna { get; } = new("finding.shared-antenna", "weak lines were seen on antenna {antenna} only, and no line read well was seen there");

    /// <summary>Finding: one tag model.</summary>
    public static ReasonKind SharedModel { get; } = new("finding.shared-tag-model", "the open tagged lines with tags of the model \"{model}\" share it, and none with such a tag was read well: qualify the model again");

    /// <summary>Finding: heard briefly on one antenna.</summary>
    public static ReasonKind BrieflyHeard { get; } = new("finding.briefly-heard", "heard on antenna {antenna} only, within {seconds} s, and silent for the rest of the session: it may be on a person or in a bag nearby; ask persons to check their pockets");

    /// <summary>Finding: a kit stood nearby all the time.</summary>
    public static ReasonKind NeighbourNearby { get; } = new("finding.neighbour-nearby", "kit {kit} stood nearby in every pass: a pass without it tells its tools from those of this kit");

    /// <summary>Finding: mark and tag name two tools.</summary>
    public static ReasonKind QuarantineProposed { get; } = new("finding.quarantine-proposed", "{by} read mark {mark} on the tool that its tag says is {tool}: quarantine the bindings of {tools} until their tags were checked");

    /// <summary>Finding: the history of a tag may be another tool's.</summary>
    public static ReasonKind HistorySuspect { get; } = new("finding.history-suspect", "what was read of tag {tag} since {at} may be another tool's: its history is not used");

    /// <summary>Finding: an unknown tag one bit away from a live one.</summary>
    public static ReasonKind NearMiss { get; } = new("finding.near-miss", "unknown tag {tag} is one bit away from the live tag {other} of tool {tool}: a decoding ghost or another tag; it stands for nothing");

    /// <summary>Finding: unknown tags that were not compared.</summary>
    public static ReasonKind NearMissLimit { get; } = new("finding.near-miss-limit", "only the first {limit} unknown tags were compared with live ones");

    /// <summary>Finding: another kit passed.</summary>
    public static ReasonKind KitPassing { get; } = new("finding.kit-passing", "{tags} tags of kit {kit} were heard within {seconds} s: the kit passed by");

    /// <summary>Finding: tools of another kit.</summary>
    public static ReasonKind ForeignTools { get; } = new("finding.foreign-tools", "{tags} {tags:tag|tags} of kit {kit} {tags:was|were} read here ({tools}): tell its custodian; {signer} signed its manifest");

    /// <summary>Finding: a retired tag.</summary>
    public static ReasonKind RetiredTag { get; } = new("finding.retired-tag", "retired tag {tag} of tool {tool} was read: something thought gone is here");

    /// <summary>Finding: replace the tag.</summary>
    public static ReasonKind TagToReplace { get; } = new("finding.tag-to-replace", "the tool was sighted but its tag stayed silent: check or replace the tag");

    /// <summary>Finding: second tag silent.</summary>
    public static ReasonKind SecondTagSilent { get; } = new("finding.second-tag-silent", "one of its live tags was read, {silent} stayed silent");

    /// <summary>Finding: heard elsewhere.</summary>
    public static ReasonKind Proximity { get; } = new("finding.proximity", "heard near station {station} at {at} outside this kit's presentation: a hint, never evidence");

    /// <summary>Finding: calibration.</summary>
    public static ReasonKind CalibrationNotFit { get; } = new("finding.calibration", "calibration: {status}. Accounting is a separate answer; set the tool apart by local rule");

    /// <summary>Finding: a session left out because it is old.</summary>
    public static ReasonKind SessionTooOld { get; } = new("finding.session-too-old", "session {session} ended at {at}, longer before the as-of instant than the policy allows: not used");

    /// <summary>Finding: a session left out because it ended later.</summary>
    public static ReasonKind SessionAfterAsOf { get; } = new("finding.session-after-as-of", "session {session} ended after the as-of instant: not looked at");

    /// <summary>Finding: a session built under another session policy than the one stated.</summary>
    public static ReasonKind SessionOfOtherPolicy { get; } = new("finding.session-of-other-policy", "session {session} was built under another session policy than this reconciliation states: not used");

    /// <summary>Finding: only sessions of other kits were handed in.</summary>
    public static ReasonKind SessionOfOtherKits { get; } = new("finding.session-of-other-kits", "session {session} was handed in, but it presents {kits}, not this kit");

    /// <summary>Finding: something a person entered that is used for no line.</summary>
    public static ReasonKind EntryNotUsed { get; } = new("finding.entry-not-used", "{what} by {by} at {at} is used for no line: {why}");

    /// <summary>Finding: a tool on two manifests.</summary>
    public static ReasonKind ToolInTwoKits { get; } = new("finding.tool-in-two-kits", "tool {tool} is also on the manifest of kit {kit}: one tool cannot satisfy two kits");

    /// <summary>Read: control tag.</summary>
    public static ReasonKind ReadControlTag { get; } = new("read.control-tag", "control tag of the station");

    /// <summary>Read: expected.</summary>
    public static ReasonKind ReadExpected { get; } = new("read.expected", "live tag of {tool}, line {line}");

    /// <summary>Read: other kit.</summary>
    public static ReasonKind ReadOtherKit { get; } = new("read.other-kit", "tool {tool} of kit {kit}, not due here");

    /// <summary>Read: retired.</summary>
    public static ReasonKind ReadRetired { get; } = new("read.retired", "retired tag, on {tool} until {until}");

    /// <summary>Read: spare.</summary>
    public static ReasonKind ReadSpare { get; } = new("read.spare", "tool {tool} is on no manifest: a spare");

    /// <summary>Read: on no manifest that is at hand, while that of a sub-kit is not.</summary>
    public static ReasonKind ReadUnlisted { get; } = new("read.on-no-manifest-handed-in", "tool {tool} is on no manifest handed in; that of {kits} was not: a spare, or a tool from inside it");

    /// <summary>Read: re-encoded.</summary>
    public static ReasonKind ReadReencoded { get; } = new("read.re-encoded", "carries the identity of {tool} in other bits than bound");

    /// <summary>Read: unknown.</summary>
    public static ReasonKind ReadUnknown { get; } = new("read.unknown", "no binding knows this tag");

    /// <summary>Read: beyond the tag limit.</summary>
    public static ReasonKind ReadOverTagLimit { get; } = new("read.over-tag-limit", "tags beyond the session's tag limit; not told apart");

    /// <summary>Read: outside the window.</summary>
    public static ReasonKind ReadOutsideWindow { get; } = new("read.outside-window", "stamped outside the presentation");

    /// <summary>On an antenna that is not one of the station's, whenever it was stamped.</summary>
    public static ReasonKind ReadUnlistedAntenna { get; } = new("read.unlisted-antenna", "on an antenna that the station does not list ({antennas})");

    /// <summary>Outside the presentation or on an antenna that is not one of the station's, in a session with both.</summary>
    public static ReasonKind ReadOutsideOrUnlisted { get; } = new("read.outside-or-unlisted", "stamped outside the presentation, or on an antenna that the station does not list ({antennas})");

    /// <summary>Read: repeat.</summary>
    public static ReasonKind ReadRepeat { get; } = new("read.repeat", "the same report again");

    /// <summary>Every line of a sub-kit accounted for.</summary>
    public static ReasonKind SubKitWhole { get; } = new("line.sub-kit-whole", "all lines inside ({total}) are accounted for");

    /// <summary>A sub-kit with open lines and no difference shown.</summary>
    public static ReasonKind SubKitOpen { get; } = new("line.sub-kit-open", "{open} of {total} {total:line|lines} inside not accounted for: a box is not its contents");

    /// <summary>A sub-kit with a difference inside.</summary>
    public static ReasonKind SubKitDiffers { get; } = new("line.sub-kit-differs", "positive evidence of a difference inside, on {count:line|lines} {lines}");

    /// <summary>A sub-kit whose manifest is not at hand.</summary>
    public static ReasonKind SubKitUnresolved { get; } = new("line.sub-kit-unresolved", "no manifest of kit {kit} revision {revision} was handed in: what it must hold is not known");

    /// <summary>A sub-kit listed by a revision that is not in force.</summary>
    public static ReasonKind SubKitNotInForce { get; } = new("line.sub-kit-not-in-force", "revision {revision} of kit {kit} is listed, another is in force: two signed lists say what it must hold");

    /// <summary>A sub-kit that the kit holds at two places.</summary>
    public static ReasonKind SubKitTwice { get; } = new("line.sub-kit-twice", "kit {kit} is listed at {where} already: one sub-kit cannot be at two places");

    /// <summary>A sub-kit without a case, of which no line is expected.</summary>
    public static ReasonKind SubKitNothingExpected { get; } = new("line.sub-kit-nothing-expected", "no line inside is expected, and it has no case: an empty list is never complete");

    /// <summary>Step: settle the lines of a sub-kit.</summary>
    public static ReasonKind StepSettleSubKit { get; } = new("step.settle-sub-kit", "open it and settle {count:line|lines} {lines}");

    /// <summary>Step: hand in a sub-kit's manifest.</summary>
    public static ReasonKind StepHandInManifest { get; } = new("step.hand-in-manifest", "hand in the signed manifest of kit {kit} revision {revision}, or have the list brought up to date");

    /// <summary>An alternate that nobody put in place on record.</summary>
    public static ReasonKind ReadAlternate { get; } = new("read.alternate", "tool {tool} is an alternate of line {line}, and no substitution is recorded");

    /// <summary>All kinds of this room.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        Sighted, Counted, PiecesCounted, BetterElsewhere, LaterSilent, LaterFew, ReadBeforeClearing, OnlyWhileNearby, ContainerOnly, CountShort, Surplus, PiecesNotCounted, PiecesUnknown, PiecesShort, PiecesOver,
        NotCounted, NoLiveTag, NoUsableSession, OtherUnit, CountNotIdentity, OtherMark, SharedMark, SightedInOtherKit, TooOld, CountOfOtherRevision, CountsDiffer,
        RetiredTagRead, TwoChips, WrongChip, Reencoded, BindingChanged, CreditedToTwoKits, CreditedToTwoLines, KitNotSaid, SubKitNotSaid, BoundControlTag, Quarantined, MarkOnOtherTool,
        IdentitySettled, SaidByUnusable,
        StepPresentAgain, StepSecondPass, StepSightTool, StepLookInKit, StepCountItems, StepCountPieces, StepSearchShortage, StepResolveSurplus, StepSettleIdentity, StepPresentAtStation,
        KitLinesOpen, KitDifferences, KitForeignTool, KitUnlistedTool, KitNoUsableSession, KitNothingExpected, KitNoReadUsed, KitManualNotAllowed, KitMorePersons,
        NotPresentedOrShielded, Attenuated, SharedLocation, SharedAntenna, SharedModel, BrieflyHeard, NeighbourNearby, QuarantineProposed, HistorySuspect, NearMiss, NearMissLimit, KitPassing, ForeignTools, RetiredTag, TagToReplace, SecondTagSilent, Proximity,
        CalibrationNotFit, SessionTooOld, SessionAfterAsOf, SessionOfOtherPolicy, SessionOfOtherKits, EntryNotUsed, ToolInTwoKits,
        ReadControlTag, ReadExpected, ReadOtherKit, ReadRetired, ReadSpare, ReadUnlisted, ReadReencoded, ReadUnknown, ReadOverTagLimit, ReadOutsideWindow, ReadUnlistedAntenna, ReadOutsideOrUnlisted, ReadRepeat,
        SubKitWhole, SubKitOpen, SubKitDiffers, SubKitUnresolved, SubKitNotInForce, SubKitTwice, SubKitNothingExpected, StepSettleSubKit, StepHandInManifest, ReadAlternate,
        SightedOutside, ReadLaterElsewhere, FindingSeenOutside, FindingReadLater, FindingMarkFormat,
    ];
}
