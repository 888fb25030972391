using System.Collections.Generic;
using ToolLedger.Records;

namespace ToolLedger.Reports;

/// <summary>The sentences of the reports about a ledger; they can be replaced by a <see cref="Wording"/>.</summary>
/// <remarks>Thread-safe: immutable.</remarks>
public static class LedgerSentences
{
    /// <summary>Title of the custody of a tool.</summary>
    public static ReasonKind CustodyTitle { get; } = new("ledger-report.custody-title", "Who answered for tool {tool}, up to {at}");

    /// <summary>A span of custody.</summary>
    public static ReasonKind Span { get; } = new("ledger-report.span", "{from} to {until}: {how}");

    /// <summary>Never signed out.</summary>
    public static ReasonKind NeverSigned { get; } = new("ledger-report.never-signed", "nobody signed for it");

    /// <summary>By an entry.</summary>
    public static ReasonKind ByEntry { get; } = new("ledger-report.by-entry", "{kind} {id} by {by}{due}");

    /// <summary>When it is due.</summary>
    public static ReasonKind Due { get; } = new("ledger-report.due", ", to be back {at}");

    /// <summary>Heading of uses.</summary>
    public static ReasonKind Uses { get; } = new("ledger-report.uses", "Uses on jobs");

    /// <summary>A use.</summary>
    public static ReasonKind Use { get; } = new("ledger-report.use", "{at} on job {job}{what} by {by}");

    /// <summary>Title of the exposure by job.</summary>
    public static ReasonKind ExposureTitle { get; } = new("ledger-report.exposure-title", "What could be affected by lines not accounted for, {at}");

    /// <summary>What an exposure report lists.</summary>
    public static ReasonKind ExposureNote { get; } = new("ledger-report.exposure-note", "Of each kit, the lines that its last sign-off left open: where they were since they were last positively accounted for. Only a positive accounting shortens this.");

    /// <summary>A line exposed somewhere.</summary>
    public static ReasonKind Exposed { get; } = new("ledger-report.exposed", "kit {kit} line {line} ({what}): there from {from} to {until}; last accounted for {since}");

    /// <summary>An open line of which no entry tells where it was.</summary>
    public static ReasonKind ExposedUnknown { get; } = new("ledger-report.exposed-unknown", "kit {kit} line {line} ({what}): no entry tells where it was, which limits nothing; last accounted for {since}");

    /// <summary>Nothing is open.</summary>
    public static ReasonKind NothingOpen { get; } = new("ledger-report.nothing-open", "No sign-off on record left a line open.");

    /// <summary>Holds stand beside the lines left open.</summary>
    public static ReasonKind HoldsBeside { get; } = new("ledger-report.holds-beside", "Holds stand besides: {holds}. What they affect is on the page of the holds.");

    /// <summary>Heading of the findings of the ledger.</summary>
    public static ReasonKind FindingsHeading { get; } = new("ledger-report.findings", "A person must look into these first");

    /// <summary>What findings mean for a page.</summary>
    public static ReasonKind FindingsNote { get; } = new("ledger-report.findings-note", "Entries of this ledger take no effect or dispute each other. What is said above is said without them.");

    /// <summary>More findings than are shown.</summary>
    public static ReasonKind FindingsMore { get; } = new("ledger-report.findings-more", "And {count} more.");

    /// <summary>Title of the open holds.</summary>
    public static ReasonKind HoldsTitle { get; } = new("ledger-report.holds-title", "Holds that stand, {at}");

    /// <summary>No hold stands.</summary>
    public static ReasonKind NoHold { get; } = new("ledger-report.no-hold", "No hold on record stands.");

    /// <summary>A hold.</summary>
    public static ReasonKind Hold { get; } = new("ledger-report.hold", "{what}, declared missing by {by} at {at}; {declared} since declared, {accounted} since last accounted for");

    /// <summary>Elapsed time not known.</summary>
    public static ReasonKind NotKnown { get; } = new("ledger-report.not-known", "a time not on record");

    /// <summary>When something was last accounted for, where nothing on record says.</summary>
    public static ReasonKind NeverAccounted { get; } = new("ledger-report.never-accounted", "at no time on record");

    /// <summary>What a hold affects.</summary>
    public static ReasonKind Affected { get; } = new("ledger-report.affected", "{things}");

    /// <summary>Nothing is known to be affected.</summary>
    public static ReasonKind NothingAffected { get; } = new("ledger-report.nothing-affected", "nothing on record, which limits nothing");

    /// <summary>A decision that something is not affected.</summary>
    public static ReasonKind Narrowed { get; } = new("ledger-report.narrowed", "{things} by decision of {by} ({role}) at {at}: {why}");

    /// <summary>Who must be told.</summary>
    public static ReasonKind NotTold { get; } = new("ledger-report.not-told", "to be told: {who}");

    /// <summary>What must be searched.</summary>
    public static ReasonKind NotSearched { get; } = new("ledger-report.not-searched", "to be searched: {steps}");

    /// <summary>Found and not released.</summary>
    public static ReasonKind FoundNotReleased { get; } = new("ledger-report.found-not-released", "declared found by {by} at {at}, {where}; it stands until a person who may releases it");

    /// <summary>Heading of what is carried.</summary>
    public static ReasonKind Carried { get; } = new("ledger-report.carried", "Left in place or dropped, not recovered");

    /// <summary>An item that is carried.</summary>
    public static ReasonKind CarriedItem { get; } = new("ledger-report.carried-item", "{what}, {where}, since {at} by {by}");

    /// <summary>Title of the contradicted sign-offs.</summary>
    public static ReasonKind ContradictedTitle { get; } = new("ledger-report.contradicted-title", "Sign-offs that a found tool contradicts, {at}");

    /// <summary>No sign-off is contradicted.</summary>
    public static ReasonKind NoContradiction { get; } = new("ledger-report.no-contradiction", "No sign-off on record is contradicted.");

    /// <summary>A contradicted sign-off.</summary>
    public static ReasonKind Contradicted { get; } = new("ledger-report.contradicted", "{signOff} of kit {kit}, {state}, signed by {by}: {line}");

    /// <summary>Heading of a find.</summary>
    public static ReasonKind FoundHeading { get; } = new("ledger-report.found-heading", "Tool {tool}, found {at}, {where}");

    /// <summary>What is exposed again.</summary>
    public static ReasonKind ExposedAgain { get; } = new("ledger-report.exposed-again", "exposed again since {since}: {things}");

    /// <summary>Title of a sign-off sheet.</summary>
    public static ReasonKind SheetTitle { get; } = new("ledger-report.sheet-title", "Sign-off sheet: kit {kit} revision {revision}, {at}");

    /// <summary>The conclusion of a sign-off sheet.</summary>
    public static ReasonKind SheetState { get; } = new("ledger-report.sheet-state", "{state}. {open} of {total} lines open. With {holder}.");

    /// <summary>Lines that were settled, by basis.</summary>
    public static ReasonKind SheetSettled { get; } = new("ledger-report.sheet-settled", "{count:line|lines} {lines}");

    /// <summary>More lines than a page shows.</summary>
    public static ReasonKind SheetMore { get; } = new("ledger-report.sheet-more", "and {count} more open {count:line|lines}: see the full report");

    /// <summary>Heading of the signatures.</summary>
    public static ReasonKind SheetSigned { get; } = new("ledger-report.sheet-signed", "Signed");

    /// <summary>Where to sign on paper.</summary>
    public static ReasonKind SheetSignHere { get; } = new("ledger-report.sheet-sign-here", "________________________  at ______________  as ______________");

    /// <summary>Amendments since.</summary>
    public static ReasonKind SheetAmended { get; } = new("ledger-report.sheet-amended", "Amended since by {ids}: read with it.");

    /// <summary>The digests of a sheet.</summary>
    public static ReasonKind SheetDigests { get; } = new("ledger-report.sheet-digests", "Result {result}, policy {policy}, library {version}.");

    /// <summary>Exposure of open lines in the shift report.</summary>
    public static ReasonKind ShiftExposed { get; } = new("ledger-report.shift-exposed", "{lines}: {things}; last accounted for {since}");

    /// <summary>Who answers, in the shift report.</summary>
    public static ReasonKind ShiftHolder { get; } = new("ledger-report.shift-holder", "kit {kit} is with {holder} since {since}");

    /// <summary>A hold in the shift report.</summary>
    public static ReasonKind ShiftHeld { get; } = new("ledger-report.shift-held", "{what} ({id}), declared missing at {at}: {things}");

    /// <summary>What the shift report's exposure rests on.</summary>
    public static ReasonKind ShiftRecorded { get; } = new("ledger-report.shift-recorded", "By the custody entries on record; only a positive accounting shortens it.");

    /// <summary>What the uses of tools that are not in date rest on, in the shift report.</summary>
    public static ReasonKind ShiftUses { get; } = new("ledger-report.shift-uses", "Uses of these tools by the custody entries on record; what nobody entered is not among them, and what is done about each, a person decides.");

    /// <summary>A use that somebody has to review.</summary>
    public static ReasonKind ShiftUse { get; } = new("ledger-report.shift-use", "{what}, used {at}{until} on job {job}{equipment}{function} by {by} ({id}): {why}");

    /// <summary>Until when a use lasted.</summary>
    public static ReasonKind ShiftUseUntil { get; } = new("ledger-report.shift-use-until", " to {at}");

    /// <summary>How many uses of a tool are on record, and how many of them somebody has to review.</summary>
    public static ReasonKind ShiftUseCount { get; } = new("ledger-report.shift-use-count", "{what}: {count} {count:use|uses} on record up to now, {open} in question");

    /// <summary>A use since the tool was last known good, before it was found bad.</summary>
    public static ReasonKind ShiftUseFound { get; } = new("ledger-report.shift-use-found", "the tool was found out of tolerance on {day}, and this use lies within what that puts in doubt");

    /// <summary>Every kind of this list.</summary>
    public static IReadOnlyList<ReasonKind> All { get; } =
    [
        CustodyTitle, Span, NeverSigned, ByEntry, Due, Uses, Use, ExposureTitle, ExposureNote, Exposed, ExposedUnknown, NothingOpen, HoldsBeside, FindingsHeading, FindingsNote, FindingsMore, HoldsTitle, NoHold, Hold, NotKnown, NeverAccounted, Affected, NothingAffected, Narrowed,
        NotTold, NotSearched, FoundNotReleased, Carried, CarriedItem, ContradictedTitle, NoContradiction, Contradicted, FoundHeading, ExposedAgain, SheetTitle, SheetState, SheetSettled,
        SheetMore, SheetSigned, SheetSignHere, SheetAmended, SheetDigests, ShiftExposed, ShiftHolder, ShiftHeld, ShiftRecorded,
        ShiftUses, ShiftUse, ShiftUseUntil, ShiftUseCount, ShiftUseFound,
    ];
}
