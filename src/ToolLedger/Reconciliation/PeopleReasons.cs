using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reconciliation;

/// <summary>Reasons, steps and findings about what people record beside sightings and counts, and of the gate before operation.</summary>
/// <remarks>The codes are stable; the sentences can be replaced by a <see cref="Wording"/>. Thread-safe: immutable.</remarks>
public static class PeopleReasons
{
    /// <summary>Less is expected: a known shortage.</summary>
    public static ReasonKind KnownShort { get; } = new("line.known-short", "{short} known to be short, annotated by {by} at {at}: {reason}");

    /// <summary>Not expected: removed by a signed annotation.</summary>
    public static ReasonKind RemovedOnRecord { get; } = new("line.removed-on-record", "removed on record by {by} at {at}: {reason}");

    /// <summary>Not expected: the policy asks for no count in this unit.</summary>
    public static ReasonKind NotCountedByRule { get; } = new("line.not-counted-by-rule", "local rule asks for no count of consumables in the unit \"{unit}\"");

    /// <summary>A count with parts that nobody joined.</summary>
    public static ReasonKind PartsNotJoined { get; } = new("line.parts-not-joined", "a count by {by} at {at} holds {parts} parts of items: no count until a person states what they make");

    /// <summary>Parts joined by a statement.</summary>
    public static ReasonKind Joined { get; } = new("line.joined", "{by} stated at {at} that {parts} parts make {wholes} whole");

    /// <summary>A joining that fits no count.</summary>
    public static ReasonKind JoiningNotUsed { get; } = new("line.joining-not-used", "a joining of {parts} parts by {by} at {at} speaks of another number of parts, or of an earlier count");

    /// <summary>The balance of a consumable.</summary>
    public static ReasonKind Balance { get; } = new("line.balance", "issued {issued} = used {used} + returned {returned} + scrapped {scrapped} + unexplained {unexplained} ({unit}; jobs {jobs})");

    /// <summary>A consumable with an unexplained shortage.</summary>
    public static ReasonKind BalanceShort { get; } = new("line.balance-short", "{short} {unit} unexplained: issued, and neither used on a job, returned nor scrapped");

    /// <summary>A consumable with a surplus.</summary>
    public static ReasonKind BalanceOver { get; } = new("line.balance-over", "{over} {unit} more than issued: a job record, a count or the list is wrong");

    /// <summary>A count older than a use.</summary>
    public static ReasonKind UsedSinceCounted { get; } = new("line.used-since-counted", "a count by {by} is not later than a use on job {job} at {at}: no count of what is there now");

    /// <summary>Entries of one instant that differ, only one of which agrees with a count.</summary>
    public static ReasonKind EntriesDiffer { get; } = new("line.entries-differ", "{what} of one instant say different numbers, and a count by {by} agrees with one of them only: it settles nothing");

    /// <summary>A job record that does not count.</summary>
    public static ReasonKind UseNotUsed { get; } = new("line.job-record-not-used", "the record of job {job} by {by} at {at} explains nothing: {why}");

    /// <summary>A breakage.</summary>
    public static ReasonKind Broken { get; } = new("line.broken", "broke at {at}, reported by {by}: {pieces} pieces");

    /// <summary>A piece count older than the breakage.</summary>
    public static ReasonKind PieceCountBefore { get; } = new("line.piece-count-before", "a piece count by {by} at {at} is older than the last word on how it broke");

    /// <summary>A reconstruction that counts.</summary>
    public static ReasonKind Reconstructed { get; } = new("line.reconstructed", "{pieces} pieces established by {by} at {at}: {decision}");

    /// <summary>A reconstruction that does not count.</summary>
    public static ReasonKind ReconstructionNotUsed { get; } = new("line.reconstruction-not-used", "the reconstruction by {by} at {at} does not count: {why}");

    /// <summary>A second person is needed.</summary>
    public static ReasonKind WitnessNeeded { get; } = new("line.witness-needed", "{what} by {by} at {at} has no second person, whom the policy asks for");

    /// <summary>A tool of a shared mark told apart.</summary>
    public static ReasonKind AlsoIdentified { get; } = new("line.also-identified", "mark {mark} is on several tools; told apart by {also}");

    /// <summary>The kit was opened after the evidence.</summary>
    public static ReasonKind OpenedSince { get; } = new("line.opened-since", "the kit was opened at {at}, after this evidence");

    /// <summary>Step: search for pieces.</summary>
    public static ReasonKind StepSearchPieces { get; } = new("step.search-pieces", "stop, search for the {short} {short:piece|pieces} of \"{what}\" and follow the local lost-tool procedure: it covers a portion of a broken tool too");

    /// <summary>Step: reconstruct a broken tool.</summary>
    public static ReasonKind StepReconstruct { get; } = new("step.reconstruct", "put the fragments of \"{what}\" together or inspect; a named person decides how many pieces it is in, and until then the local lost-tool procedure covers the rest");

    /// <summary>Step: join parts.</summary>
    public static ReasonKind StepJoinParts { get; } = new("step.join-parts", "a person states whether the {parts} parts make whole items, or counts again");

    /// <summary>Step: count again.</summary>
    public static ReasonKind StepCountAgain { get; } = new("step.count-again", "count again, now, the {amount} listed: {what}");

    /// <summary>Step: search what is unexplained.</summary>
    public static ReasonKind StepBalance { get; } = new("step.balance", "check the job cards, search for the {short} {unit} of \"{what}\" and follow the local lost-tool procedure");

    /// <summary>Step: tell tools of one mark apart.</summary>
    public static ReasonKind StepTellApart { get; } = new("step.tell-apart", "mark {mark} is on several tools of the kit: tell this one by its tag, serial number, size or description");

    /// <summary>Step: a second person.</summary>
    public static ReasonKind StepSecondPerson { get; } = new("step.second-person", "let a second person look and count too, and record who");

    /// <summary>Step: inventory again.</summary>
    public static ReasonKind StepInventoryAgain { get; } = new("step.inventory-again", "inventory kit {kit} again, now, before anything is operated");

    /// <summary>Step: settle an unlisted item.</summary>
    public static ReasonKind StepUnlistedItem { get; } = new("step.unlisted-item", "follow the local procedure for the item reported gone before anything is operated");

    /// <summary>Kit: something removed on record is inside.</summary>
    public static ReasonKind KitRemovedSeen { get; } = new("kit.removed-line-seen", "line {line}, removed on record, was {how} inside by {by} at {at}");

    /// <summary>Finding: a tool removed on record was read.</summary>
    public static ReasonKind FindingRemovedRead { get; } = new("finding.removed-line-read", "tool {tool}, removed on record, was read here: correct the annotation or find where the tool belongs");

    /// <summary>Finding: a tool removed on record was sighted.</summary>
    public static ReasonKind FindingRemovedSighted { get; } = new("finding.removed-line-sighted", "tool {tool}, removed on record, was sighted by {by} at {at}, {where}");

    /// <summary>Finding: an annotation that does not count.</summary>
    public static ReasonKind FindingAnnotation { get; } = new("finding.annotation-not-used", "the annotation of line {line} by {by} at {at} does not count: {why}");

    /// <summary>Finding: a broken tool.</summary>
    public static ReasonKind FindingBroken { get; } = new("finding.broken", "the tool is broken: set it apart by local rule");

    /// <summary>Finding: opened since.</summary>
    public static ReasonKind FindingOpened { get; } = new("finding.opened-since", "the kit was opened at {at} by {by}, after the evidence of {count} {count:line|lines}: what is settled there may no longer hold");

    /// <summary>Finding: an item on no list was reported gone.</summary>
    public static ReasonKind FindingUnlisted { get; } = new("finding.unlisted-item", "{by} reported at {at} that \"{what}\" of {owner}, which is on no list, is gone; last seen {seen}; touched since: {touched}; local procedure for such an item applies");

    /// <summary>Read: removed on record.</summary>
    public static ReasonKind ReadRemoved { get; } = new("read.removed-on-record", "tool {tool} is removed on record, not due here");

    /// <summary>Gate: the kit is not complete.</summary>
    public static ReasonKind GateNotComplete { get; } = new("gate.not-complete", "the inventory of {at} says {state}, not complete");

    /// <summary>Gate: the inventory is later than asked.</summary>
    public static ReasonKind GateLater { get; } = new("gate.inventory-later", "the inventory is of {at}, later than the instant asked for");

    /// <summary>Gate: opened since the inventory.</summary>
    public static ReasonKind GateOpened { get; } = new("gate.opened-since", "the kit was opened at {at}; the evidence of {count} {count:line|lines} is not newer");

    /// <summary>Gate: the inventory is too old.</summary>
    public static ReasonKind GateTooOld { get; } = new("gate.too-old", "the evidence of {count} {count:line|lines} is older than the policy allows");

    /// <summary>Gate: evidence without a time.</summary>
    public static ReasonKind GateNoTime { get; } = new("gate.no-time", "the evidence of {count} {count:line|lines} has no time of its own");

    /// <summary>Gate: an unlisted item was reported.</summary>
    public static ReasonKind GateUnlisted { get; } = new("gate.unlisted-item", "\"{what}\", which is on no list, was reported gone at {at}");

    /// <summary>Gate: people said something about the kit since the inventory.</summary>
    public static ReasonKind GateEntries { get; } = new("gate.entries-since", "{count} {count:entry|entries} about the kit {count:is|are} later than the inventory, the last {what} by {by} at {at}");

    /// <summary>Gate: custody of the kit or its tools has entries since the inventory.</summary>
    public static ReasonKind GateCustody { get; } = new("gate.custody-since", "{count} custody {count:entry|entries} about the kit or its tools {count:is|are} later than the inventory, or went on after it: {entries}");

    /// <summary>Gate: the kit or its tools were read since the inventory.</summary>
    public static ReasonKind GateSessions { get; } = new("gate.sessions-since", "{count} {count:session|sessions} later than the inventory {count:presents|present} the kit or heard its tools, the last {session} until {at}");

    /// <summary>Gate: tags of the kit were bound, retired or doubted since the inventory.</summary>
    public static ReasonKind GateTags { get; } = new("gate.tags-since", "tags of {count} {count:tool|tools} were bound, retired, doubted or cleared after the inventory: {tools}");

    /// <summary>Gate: satisfied, after the last opening on record.</summary>
    public static ReasonKind GateSatisfied { get; } = new("gate.satisfied", "every line was accounted for after the last opening on record, that of {opened}; the oldest at {at}");

    /// <summary>Gate: satisfied, and no opening is on record.</summary>
    public static ReasonKind GateSatisfiedUnopened { get; } = new("gate.satisfied-unopened", "every line is accounted for, the oldest at {at}; no opening on record");

    /// <summary>All kinds of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        KnownShort, RemovedOnRecord, NotCountedByRule, PartsNotJoined, Joined, JoiningNotUsed, Balance, BalanceShort, BalanceOver, UsedSinceCounted,
        EntriesDiffer,
        UseNotUsed, Broken, PieceCountBefore, Reconstructed, ReconstructionNotUsed, WitnessNeeded, AlsoIdentified, OpenedSince, StepSearchPieces,
        StepReconstruct, StepJoinParts, StepCountAgain, StepBalance, StepTellApart, StepSecondPerson, StepInventoryAgain, StepUnlistedItem,
        KitRemovedSeen, FindingRemovedRead, FindingRemovedSighted, FindingAnnotation, FindingBroken, FindingOpened, FindingUnlisted, ReadRemoved, GateNotComplete,
        GateLater, GateOpened, GateTooOld, GateNoTime, GateUnlisted, GateEntries, GateCustody, GateSessions, GateTags, GateSatisfied, GateSatisfiedUnopened,
    ];
}
